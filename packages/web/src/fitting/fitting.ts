import type { Design, Part } from '../engine/contract.js';
import { assemblySteps } from '../solid/assembly-order.js';
import { spaceTexts } from '../texts/space.js';

/** Equal pieces that go in at one step. */
export interface FittingLine {
  /** Names the line as long as the design stays the same. */
  readonly key: string;
  readonly mark: string | null;
  readonly name: string;
  readonly count: number;
  readonly length: number | null;
  readonly width: number | null;
  /** Mass of one piece [kg]. */
  readonly mass: number;
  readonly note: string | null;
}

export interface FittingStep {
  readonly name: string;
  readonly lines: readonly FittingLine[];
}

/** A marked piece and the step at which it goes in, counted from 1. */
export interface FittingPiece extends FittingLine {
  readonly step: number;
  readonly stepName: string;
}

export interface Fitting {
  readonly project: string;
  readonly invented: boolean;
  readonly revision: string;
  readonly steps: readonly FittingStep[];
  readonly pieces: readonly FittingPiece[];
}

/** What a fitter needs of a design: what goes in when, and every marked piece. */
export function fittingOf(design: Design, revision: string, itemNames: Readonly<Record<string, string>>): Fitting {
  const nameOf = (of: string | null) =>
    of === null ? null : ([...design.enclosures, ...design.runs].find((t) => t.id === of)?.name ?? of);
  const steps = assemblySteps(design).map(
    ({ stage, of, parts }): FittingStep => ({
      name: spaceTexts.steps.name(stage, nameOf(of)),
      lines: linesOf(`${of ?? ''} ${stage}`, parts, itemNames),
    }),
  );
  const pieces = steps
    .flatMap(({ name, lines }, i) => lines.map((line): FittingPiece => ({ ...line, step: i + 1, stepName: name })))
    .filter((piece) => piece.mark !== null)
    .sort((a, b) => byMark(a.mark ?? '', b.mark ?? '') || a.step - b.step);
  const { name: project, invented } = design.project;
  return { project, invented, revision, steps, pieces };
}

/** Marks in the order in which people count: P2 before P10. */
const byMark = new Intl.Collator('en', { numeric: true }).compare;

function linesOf(
  step: string,
  parts: readonly Part[],
  names: Readonly<Record<string, string>>,
): readonly FittingLine[] {
  const lines = new Map<string, FittingLine>();
  for (const part of parts) {
    const key = `${step} ${part.mark ?? ''} ${part.item} ${part.length?.toFixed(4) ?? ''} ${part.width?.toFixed(4) ?? ''}`;
    const line = lines.get(key);
    lines.set(key, {
      key,
      mark: part.mark ?? null,
      name: names[part.item] ?? part.item,
      count: (line?.count ?? 0) + part.count,
      length: part.length ?? null,
      width: part.width ?? null,
      mass: part.mass / Math.max(1, part.count),
      note: part.note ?? null,
    });
  }
  // Marked pieces first: what joins them is taken out when they lie there.
  return [...lines.values()].sort((a, b) => Number(a.mark === null) - Number(b.mark === null));
}
