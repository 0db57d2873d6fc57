import { useMemo } from 'react';
import type { Finding, Vec2 } from '../engine/contract.js';
import { VerdictShape } from '../notes/verdict-mark.js';
import { focusFinding, openFinding, useWorkbench } from '../state/store.js';
import { findingSpots } from './finding-spots.js';
import { placeOfFinding } from './places.js';
import { unspoken } from './unspoken.js';
import { type PlanView, type Size, toScreen } from './view.js';

/** Small marks where something fails or wants attention, and a large one for the finding in focus. The notes hold the same by keyboard. */
export function FindingMarks({ view, size }: { readonly view: PlanView; readonly size: Size }) {
  const computed = useWorkbench((s) => s.computed);
  const decider = useWorkbench((s) => s.decider);
  const focused = useWorkbench((s) => s.focusedFinding ?? s.openFinding);
  const spots = useMemo(
    () => (computed ? findingSpots(computed, (f) => decider === null || f.decider === decider) : []),
    [computed, decider],
  );
  const inFocus = computed?.findings.find((f) => f.id === focused);
  const place = computed && inFocus ? placeOfFinding(computed, inFocus) : undefined;
  return (
    <g className="finding-marks" {...unspoken}>
      {spots.map(({ at, findings }) => (
        <Mark
          key={findings[0]!.id}
          finding={findings[0]!}
          at={toScreen(view, size, at)}
          share={0.67}
          stale={computed?.stale.has(findings[0]!.id) === true}
        />
      ))}
      {inFocus && place && <Mark finding={inFocus} at={toScreen(view, size, place)} share={1} halo />}
    </g>
  );
}

interface MarkProps {
  readonly finding: Finding;
  readonly at: Vec2;
  /** Size as a share of the mark in the notes. */
  readonly share: number;
  readonly halo?: boolean;
  readonly stale?: boolean;
}

function Mark({ finding, at: [x, y], share, halo = false, stale = false }: MarkProps) {
  return (
    <g
      className={stale ? 'mark stale' : 'mark'}
      transform={`translate(${x - 9 * share} ${y - 9 * share}) scale(${share})`}
      onPointerDown={(e) => {
        e.stopPropagation();
        openFinding(finding.id);
      }}
      onPointerEnter={() => focusFinding(finding.id)}
      onPointerLeave={() => focusFinding(null)}
    >
      {halo && <circle cx={9} cy={9} r={15} className="halo" />}
      <VerdictShape verdict={finding.verdict} />
    </g>
  );
}
