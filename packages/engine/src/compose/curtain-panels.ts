import type { Catalogue, Cloth, Runner } from '../catalogue/schema.js';
import { coveredLength, type PanelAim, type PanelChoice, runnersOf, selectPanels } from '../curtain/index.js';
import { at3 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import { type Outcome, ok, type Problem, problem, refuse } from '../floor/problem.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';
import { hemWeightFor, type TrackKit } from './curtain-items.js';
import { lineBetween, pointAt, type TrackPath } from './curtain-path.js';
import type { PartDraft } from './draft.js';

export interface PanelInput {
  readonly of: string;
  readonly rulePrefix: string;
  readonly path: TrackPath;
  readonly cloth: Cloth;
  readonly kit: TrackKit;
  /** Places where panels part or meet without passing, along the path [m]. */
  readonly breaks: readonly number[];
  readonly trackHeight: number;
  readonly curtainTop: number;
  readonly hemGap: number;
  readonly drop: number;
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
  readonly problemPath: readonly (string | number)[];
}

export interface Stretch {
  readonly from: number;
  /** May lie beyond the length of a closed track: the stretch then goes on past its start. */
  readonly to: number;
  /** Track that its panels cover, laps at its ends included [m]. */
  readonly covered: number;
  /** Widths in the order in which they hang [m]. */
  readonly widths: readonly number[];
  readonly flatWidth: number;
  /** Flat width over covered track. */
  readonly fullness: number;
  readonly fits: boolean;
  /** Why no standard panels fit; empty when they do. */
  readonly why: string;
  readonly stackBack: number;
  readonly mass: number;
}

export interface PanelParts {
  readonly parts: readonly PartDraft[];
  readonly stretches: readonly Stretch[];
}

const priceOrder: readonly PanelAim[] = ['price', 'panels', 'width'];
const unpricedOrder: readonly PanelAim[] = ['panels', 'width'];
/** Places on the track closer than this are one place [m]. */
const nothing = 1e-6;

/** Stretches between the places where panels part; a closed track without any has one that meets itself. */
export function stretchesBetween(
  path: TrackPath,
  breaks: readonly number[],
): { from: number; to: number; laps: number }[] {
  const { length, closed } = path;
  const inside = breaks.filter((b) => closed || (b > nothing && b < length - nothing));
  const sorted = [...inside].sort((a, b) => a - b).filter((b, i, all) => i === 0 || b - all[i - 1]! > nothing);
  if (closed) {
    if (sorted.length === 0) return [{ from: 0, to: length, laps: 2 }];
    return sorted.map((from, i) => ({ from, to: sorted[i + 1] ?? sorted[0]! + length, laps: 2 }));
  }
  const stops = [0, ...sorted, length];
  return stops.slice(1).map((to, i) => ({
    from: stops[i]!,
    to,
    laps: (i > 0 ? 1 : 0) + (i < stops.length - 2 ? 1 : 0),
  }));
}

/**
 * Panels of every stretch: the cheapest standard widths within the fullness rules. Where none fit, the widest choice under the
 * band that still closes the track, else the next over it; the stretch then says so.
 */
export function panelParts(input: PanelInput): Outcome<PanelParts> {
  const { rules, cloth, path } = input;
  const overlap = ruleNumber(rules, 'curtain.overlap');
  const problems: Problem[] = [];
  const parts: PartDraft[] = [];
  const stretches: Stretch[] = [];
  const priced = cloth.widths.every((w) => w.price);
  for (const { from, to, laps } of stretchesBetween(path, input.breaks)) {
    const covered = coveredLength(to - from, laps, overlap);
    const found = selectPanels({
      length: covered,
      extraLow: ruleNumber(rules, 'curtain.fullness-low'),
      extraHigh: ruleNumber(rules, 'curtain.fullness-high'),
      stock: cloth.widths.map((w) => ({ length: w.width, price: w.price ? Number(w.price.amount) : 0 })),
      jointLoss: cloth.jointLoss,
      aims: priced ? priceOrder : unpricedOrder,
    });
    if (!found.ok) {
      problems.push(...found.problems.map((p) => ({ ...p, path: [...input.problemPath, 'cloth'] })));
      continue;
    }
    const { choice, below, above, least, most } = found.value;
    const taken = choice ?? (below && below.flatWidth >= covered - nothing ? below : (above ?? below));
    if (!taken) {
      problems.push(noPanels(cloth, covered, input.problemPath));
      continue;
    }
    const why = choice
      ? ''
      : `No standard panels add up to ${millimetreText(least)} to ${millimetreText(most)} for ${millimetreText(covered)} of covered track: the nearest are ${[below, above].flatMap((c) => (c ? [millimetreText(c.flatWidth)] : [])).join(' and ')}.`;
    const hung = hangPanels(input, { from, to, laps, overlap, choice: taken, why });
    if (!hung.ok) problems.push(...hung.problems);
    else {
      parts.push(...hung.value.parts);
      stretches.push({
        from,
        to,
        covered,
        flatWidth: taken.flatWidth,
        fullness: taken.flatWidth / covered,
        fits: choice !== null,
        why,
        ...hung.value.stretch,
      });
    }
  }
  return problems.length > 0 ? refuse(problems) : ok({ parts, stretches });
}

const noPanels = (cloth: Cloth, covered: number, path: readonly (string | number)[]): Problem =>
  problem(
    'compose/no-panels',
    [...path, 'cloth'],
    `${cloth.name} has no panels for ${millimetreText(covered)} of track.`,
    'Choose another cloth or add a width to it.',
  );

interface Hanging {
  readonly from: number;
  readonly to: number;
  readonly laps: number;
  readonly overlap: number;
  readonly choice: PanelChoice;
  readonly why: string;
}

/** Panels of one stretch side by side, widest first, with their runners and hem weights. */
function hangPanels(input: PanelInput, { from, to, laps, overlap, choice, why }: Hanging) {
  const { cloth, kit, path } = input;
  const widths = choice.counts.flatMap((n, i) => Array.from({ length: n }, () => cloth.widths[i]!.width));
  widths.sort((a, b) => b - a);
  const lapStart = !path.closed && from < nothing ? 0 : laps > 0 ? overlap / 2 : 0;
  const lapEnd = !path.closed && to > path.length - nothing ? 0 : laps > 0 ? overlap / 2 : 0;
  const start = from - lapStart;
  const covered = to + lapEnd - start;
  const parts: PartDraft[] = [];
  const problems: Problem[] = [];
  let done = 0;
  let stackBack = kit.endStop.length;
  for (const width of widths) {
    const a = start + (covered * done) / choice.totalWidth;
    done += width;
    const b = start + (covered * done) / choice.totalWidth;
    const runners = runnersOf({
      width,
      pitch: kit.runner.pitch,
      runnerLength: kit.runner.length,
      thickness: cloth.thickness,
      endStop: 0,
    });
    if (!runners.ok) problems.push(...runners.problems.map((p) => ({ ...p, path: [...input.problemPath, 'cloth'] })));
    else {
      stackBack += runners.value.stackBack;
      parts.push(
        ...onePanel(input, { a, b, width, runners: runners.value.runners, fullness: choice.flatWidth / covered, why }),
      );
    }
  }
  const mass = parts.reduce((sum, p) => sum + p.mass, 0);
  return problems.length > 0 ? refuse(problems) : ok({ parts, stretch: { widths, stackBack, mass } });
}

interface OnePanel {
  readonly a: number;
  readonly b: number;
  readonly width: number;
  readonly runners: number;
  readonly fullness: number;
  readonly why: string;
}

function onePanel(input: PanelInput, { a, b, width, runners, fullness, why }: OnePanel): PartDraft[] {
  const { of, rulePrefix, cloth, kit, path, drop, hemGap, curtainTop } = input;
  const weight = hemWeightFor(input.catalogue, cloth);
  const middle = pointAt(path, (a + b) / 2);
  const ordered = [...cloth.drops].sort((x, y) => x - y).find((d) => d >= drop - nothing)!;
  const hem = weight ? 0 : width * cloth.hem.massPerLength;
  const stock =
    ordered - drop > nothing ? `Ordered ${millimetreText(ordered)} high, hemmed to ${millimetreText(drop)}.` : '';
  const parts: PartDraft[] = [
    {
      item: cloth.id,
      group: 'curtains',
      role: 'curtain panel',
      of,
      count: 1,
      length: drop,
      width,
      thickness: cloth.thickness,
      mass: width * drop * cloth.massPerArea + hem,
      shape: { shape: 'cloth', line: lineBetween(path, a, b), top: curtainTop, bottom: hemGap, fullness },
      placed: {
        rule: `${rulePrefix}.panel`,
        because:
          why === '' ? 'The cheapest standard widths within the fullness rules cover this stretch of track.' : why,
      },
      ...(stock === '' ? {} : { note: stock }),
    },
    {
      item: kit.runner.id,
      group: 'runners',
      role: 'runner',
      of,
      count: runners,
      mass: runners * kit.runner.mass,
      shape: { shape: 'loose', at: at3(middle, input.trackHeight) },
      placed: { rule: `${rulePrefix}.runner`, because: runnerReason(kit.runner) },
    },
  ];
  if (weight)
    parts.push({
      item: weight.id,
      group: 'curtains',
      role: 'hem weight',
      of,
      count: 1,
      length: width,
      mass: width * weight.massPerLength,
      shape: { shape: 'loose', at: at3(middle, hemGap) },
      placed: { rule: `${rulePrefix}.hem-weight`, because: 'The hem of the cloth takes a weight along its width.' },
    });
  return parts;
}

const runnerReason = (runner: Runner): string =>
  `Runners sit at both edges of a panel and at most ${millimetreText(runner.pitch)} apart.`;
