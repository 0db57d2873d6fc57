import { useEffect, useMemo, useState } from 'react';
import { fetchRevision, type Revision } from '../projects/api.js';
import { attempt } from '../projects/projects-store.js';
import { useRevisions } from '../projects/revisions.js';
import { openFinding, useWorkbench } from '../state/store.js';
import { changesTexts } from '../texts/changes.js';
import { ChangesView, type NamedState } from './changes-view.js';

/** Named revisions, the project as it was opened, and as it stands now: any two of them beside each other. */
export function ProjectChanges() {
  const opened = useWorkbench((s) => s.openedText);
  const now = useWorkbench((s) => s.text);
  const named = useRevisionTexts();
  const states = useMemo(
    () => [{ label: changesTexts.opened, text: opened }, ...named, { label: changesTexts.now, text: now }],
    [opened, named, now],
  );
  return <ChangesView states={states} onOpenFinding={openFinding} />;
}

/** The texts of all revisions, the first named first; a revision never changes, so that each is fetched once. */
function useRevisionTexts(): readonly NamedState[] {
  const project = useWorkbench((s) => s.project);
  const revisions = useRevisions((s) => s.revisions);
  const [texts, setTexts] = useState<ReadonlyMap<number, string>>(new Map());
  useEffect(() => {
    const missing = revisions?.filter((each) => !texts.has(each.number)) ?? [];
    if (project === null || missing.length === 0) return;
    void attempt(async () => {
      const fetched = await Promise.all(missing.map(({ number }) => fetchRevision(project, number)));
      setTexts((known) => new Map([...known, ...fetched.map((each) => [each.number, each.text] as const)]));
    });
  }, [project, revisions, texts]);
  return useMemo(() => (revisions ?? []).flatMap((each) => stateOf(each, texts)).reverse(), [revisions, texts]);
}

function stateOf({ number, name }: Revision, texts: ReadonlyMap<number, string>): readonly NamedState[] {
  const text = texts.get(number);
  return text === undefined ? [] : [{ label: changesTexts.revision(number, name), text }];
}
