import { type Outcome, ok } from '@cloche/engine';
import { type Attachments, attachmentsIn } from './attachments.js';
import { openDatabase } from './database.js';
import { type OpenedFiles, openedFilesIn } from './opened-files.js';
import { type Projects, projectsIn } from './projects.js';
import { type Revisions, revisionsIn } from './revisions.js';
import { type Shelf, shelfIn } from './shelf.js';
import { type Steps, stepsIn } from './steps.js';
import { type WholeProjects, wholeProjectsIn } from './whole-project.js';

/** All that is kept. Every promise that changes something is kept once it is durable. Times come in as arguments. */
export interface Store {
  readonly projects: Projects;
  readonly steps: Steps;
  readonly revisions: Revisions;
  readonly attachments: Attachments;
  readonly shelf: Shelf;
  readonly openedFiles: OpenedFiles;
  readonly whole: WholeProjects;
  readonly close: () => Promise<void>;
}

/**
 * Opens the store of a data folder, which is made when it is not there; null keeps everything in memory only.
 *
 * One process at a time: the folder stays locked until the store is closed or its process ends, however it ends.
 * @returns the store, or why the folder cannot be used: `store/folder`, `store/in-use`, `store/damaged`, `store/newer`
 */
export async function openStore(folder: string | null): Promise<Outcome<Store>> {
  const opened = await openDatabase(folder);
  if (!opened.ok) return opened;
  const db = opened.value;
  const attachments = attachmentsIn(db);
  return ok({
    projects: projectsIn(db),
    steps: stepsIn(db),
    revisions: revisionsIn(db),
    attachments,
    shelf: shelfIn(db),
    openedFiles: openedFilesIn(db),
    whole: wholeProjectsIn(db, attachments),
    close: () => db.destroy(),
  });
}
