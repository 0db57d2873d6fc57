import type { Finding } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';
import { Note } from './note.js';

/** From this many on, findings of one requirement are folded to one line. */
const folded = 4;

interface BundleProps {
  readonly requirement: string;
  readonly findings: readonly Finding[];
}

/** Findings that ask the same of many things: few stand by themselves, many are folded. */
export function Bundle({ requirement, findings }: BundleProps) {
  const inHand = useWorkbench((s) => findings.some((f) => f.id === s.openFinding));
  const notes = findings.map((finding) => <Note key={finding.id} finding={finding} />);
  if (findings.length < folded) return notes;
  return (
    <li className="bundle">
      <details open={inHand || undefined}>
        <summary>
          <span className="requirement">{requirement}</span>
          <span className="count">{findings.length}</span>
        </summary>
        <ul>{notes}</ul>
      </details>
    </li>
  );
}
