import { NoProject } from '../session/http-wire.js';
import { keepPage } from '../state/offline.js';
import { fetchOpened } from '../state/server.js';
import { begin, closeProject, goToStep, openProject, useWorkbench } from '../state/store.js';
import { projectTexts } from '../texts/projects.js';
import { texts } from '../texts.js';
import { firstOf, hashOf, type Place, placeOf } from './address.js';
import { createProject, fetchProjects } from './api.js';
import { attempt, messageOf, refreshList, tell, useProjects } from './projects-store.js';
import { followRevisions } from './revisions.js';
import { flushSummary, sendSummaries } from './send-summaries.js';

/** Brings the page to life: fetches what it computes from and goes to the place that its address names. */
export async function start(): Promise<void> {
  try {
    await begin();
    await go(placeOf(location.hash) ?? (await firstPlace()));
    followAddress();
    followRevisions();
    sendSummaries();
    void keepPage();
  } catch (error) {
    useWorkbench.setState({ trouble: messageOf(error), busy: false });
  }
}

/** The brief of the command line; on the very first start a worked example; else the list. */
async function firstPlace(): Promise<Place> {
  const { project } = await fetchOpened();
  if (project !== null) return firstOf(project);
  const known = [...(await fetchProjects()), ...(await fetchProjects(true))];
  const example = useWorkbench.getState().examples[0];
  if (known.length > 0 || !example) return { at: 'list' };
  const { id } = await createProject(example.text);
  return firstOf(id);
}

/** True while several parts of the state change for one place: the address is written once, after them. */
let going = false;

export async function go(place: Place): Promise<void> {
  const fitting = place.at === 'fitting';
  if (place.at !== 'list' && place.id === useWorkbench.getState().project) {
    useProjects.setState({ fitting });
    if (place.at === 'project') goToStep(place.step);
    writeAddress();
    return;
  }
  const summary = flushSummary();
  going = true;
  const opening = place.at === 'list' ? undefined : openProject(place.id);
  if (place.at === 'project') goToStep(place.step);
  if (place.at === 'list') closeProject();
  useProjects.setState({ atList: place.at === 'list', fitting, asking: null });
  going = false;
  writeAddress();
  if (place.at === 'list') {
    await summary;
    await attempt(refreshList);
    return;
  }
  tell(null);
  try {
    await opening;
  } catch (error) {
    await go({ at: 'list' });
    tell(error instanceof NoProject ? projectTexts.noProject : messageOf(error));
  }
}

/** A window is known by its project among many. */
const titleOf = (project: string | undefined): string => (project ? `${project} – ${texts.name}` : texts.name);

const place = (): Place => {
  const { project, step } = useWorkbench.getState();
  if (project === null) return { at: 'list' };
  return useProjects.getState().fitting ? { at: 'fitting', id: project } : { at: 'project', id: project, step };
};

function writeAddress(): void {
  const hash = hashOf(place());
  if (going || location.hash === hash) return;
  // What the page was loaded with names no place to come back to.
  if (placeOf(location.hash) === null) history.replaceState(null, '', hash);
  else history.pushState(null, '', hash);
}

/** The address follows the sheet, and the sheet follows the address: back and forward work. */
function followAddress(): void {
  useWorkbench.subscribe((now, before) => {
    if (now.project !== before.project || now.step !== before.step) writeAddress();
    if (now.computed !== before.computed) document.title = titleOf(now.computed?.design.project.name);
  });
  window.addEventListener('hashchange', () => {
    const wanted = placeOf(location.hash);
    if (wanted === null) writeAddress();
    else void go(wanted);
  });
}
