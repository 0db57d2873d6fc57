import { useEffect, useMemo } from 'react';
import { create } from 'zustand';
import { useWorkbench } from '../state/store.js';
import { projectTexts } from '../texts/projects.js';
import { fetchRevision, fetchRevisions, type Revision } from './api.js';
import { attempt } from './projects-store.js';

/** Revisions of the project in hand, newest first; null until they came. */
export const useRevisions = create<{
  readonly revisions: readonly Revision[] | null;
  /** Texts that were fetched, by number: a revision never changes. */
  readonly texts: Readonly<Record<number, string>>;
}>(() => ({ revisions: null, texts: {} }));

/** The text of a revision of the project in hand. */
export async function revisionText(number: number): Promise<string> {
  const { project } = useWorkbench.getState();
  const known = useRevisions.getState().texts[number];
  if (known !== undefined || project === null) return known ?? '';
  const { text } = await fetchRevision(project, number);
  if (useWorkbench.getState().project === project)
    useRevisions.setState(({ texts }) => ({ texts: { ...texts, [number]: text } }));
  return text;
}

/** A state of the project that can be laid beside another. */
export interface ProjectState {
  readonly label: string;
  readonly text: string;
}

/** The project as it was opened and as it stands now, and its revisions, newest first, as their texts arrive. */
export function useStates(): readonly ProjectState[] {
  const { revisions, texts } = useRevisions();
  const opened = useWorkbench((s) => s.openedText);
  const now = useWorkbench((s) => s.text);
  useEffect(() => {
    for (const { number } of revisions ?? []) void attempt(async () => void (await revisionText(number)));
  }, [revisions]);
  return useMemo(() => {
    const say = projectTexts.revision;
    const named = (revisions ?? []).flatMap(({ number, name }): ProjectState[] => {
      const text = texts[number];
      return text === undefined ? [] : [{ label: `${say.number(number)}: ${name}`, text }];
    });
    return [{ label: say.asOpened, text: opened }, ...named, { label: say.now, text: now }];
  }, [revisions, texts, opened, now]);
}

async function refresh(project: string): Promise<void> {
  const revisions = await fetchRevisions(project);
  if (useWorkbench.getState().project === project)
    useRevisions.setState({ revisions: [...revisions].sort((a, b) => b.number - a.number) });
}

/** Fetches the revisions when a project is opened, and when the server tells that one was named. */
export function followRevisions(): void {
  const fetchNow = (): void => {
    const { project } = useWorkbench.getState();
    if (project !== null) void attempt(() => refresh(project));
  };
  useWorkbench.subscribe((now, before) => {
    if (now.project !== before.project) useRevisions.setState({ revisions: null, texts: {} });
    if (now.project !== before.project || now.revisionNews !== before.revisionNews) fetchNow();
  });
  fetchNow();
}
