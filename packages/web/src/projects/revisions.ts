import { create } from 'zustand';
import { useWorkbench } from '../state/store.js';
import { fetchRevisions, type Revision } from './api.js';
import { attempt } from './projects-store.js';

/** Revisions of the project in hand, newest first; null until they came. */
export const useRevisions = create<{ readonly revisions: readonly Revision[] | null }>(() => ({ revisions: null }));

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
    if (now.project !== before.project) useRevisions.setState({ revisions: null });
    if (now.project !== before.project || now.revisionNews !== before.revisionNews) fetchNow();
  });
  fetchNow();
}
