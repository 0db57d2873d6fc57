import type { Computed, Finding, Vec2 } from '../engine/contract.js';
import { placeOfFinding } from './places.js';

/** A place of the plan with what was found there, the gravest first. */
export interface FindingSpot {
  readonly at: Vec2;
  readonly findings: readonly Finding[];
}

/** Places nearer than this are one [m]. */
const same = 0.15;
const grave = { fails: 0, attention: 1 } as Readonly<Partial<Record<Finding['verdict'], number>>>;

/** Where something fails or wants attention; what is only not assessed is told by the notes. */
export function findingSpots(
  computed: Computed,
  counts: (finding: Finding) => boolean = () => true,
): readonly FindingSpot[] {
  const spots: { at: Vec2; findings: Finding[] }[] = [];
  const wanting = computed.findings
    .filter((f) => grave[f.verdict] !== undefined && counts(f))
    .sort((a, b) => grave[a.verdict]! - grave[b.verdict]!);
  for (const finding of wanting) {
    const at = placeOfFinding(computed, finding);
    if (!at) continue;
    const near = spots.find((spot) => Math.hypot(spot.at[0] - at[0], spot.at[1] - at[1]) < same);
    if (near) near.findings.push(finding);
    else spots.push({ at, findings: [finding] });
  }
  return spots;
}
