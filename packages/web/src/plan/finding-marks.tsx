import type { Finding } from '../engine/contract.js';
import { VerdictShape } from '../notes/verdict-mark.js';
import { focusFinding, openFinding, useWorkbench } from '../state/store.js';
import { placeOfFinding } from './places.js';
import { unspoken } from './unspoken.js';
import { type PlanView, type Size, toScreen } from './view.js';

interface Mark {
  readonly finding: Finding;
  readonly x: number;
  readonly y: number;
}

/** Marks of what fails, and of the finding in focus, at their places. The notes hold the same by keyboard. */
export function FindingMarks({ view, size }: { readonly view: PlanView; readonly size: Size }) {
  const computed = useWorkbench((s) => s.computed);
  const focused = useWorkbench((s) => s.focusedFinding ?? s.openFinding);
  if (!computed) return null;
  const taken = new Set<string>();
  const marks: Mark[] = [];
  for (const finding of computed.findings) {
    if (finding.verdict !== 'fails' && finding.id !== focused) continue;
    const place = placeOfFinding(computed, finding);
    if (!place) continue;
    const [x, y] = toScreen(view, size, place);
    const key = `${Math.round(x / 14)} ${Math.round(y / 14)}`;
    if (taken.has(key) && finding.id !== focused) continue;
    taken.add(key);
    marks.push({ finding, x, y });
  }
  return (
    <g className="finding-marks" {...unspoken}>
      {marks.map(({ finding, x, y }) => (
        <g
          key={finding.id}
          className={finding.id === focused ? 'mark in-focus' : 'mark'}
          transform={`translate(${x - 9} ${y - 9})`}
          onPointerDown={(e) => {
            e.stopPropagation();
            openFinding(finding.id);
          }}
          onPointerEnter={() => focusFinding(finding.id)}
          onPointerLeave={() => focusFinding(null)}
        >
          {finding.id === focused && <circle cx={9} cy={9} r={15} className="halo" />}
          <VerdictShape verdict={finding.verdict} />
        </g>
      ))}
    </g>
  );
}
