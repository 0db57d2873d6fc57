import type { CompleteEnclosure } from '../brief/complete.js';
import type { SideName } from '../brief/schema.js';
import { type Outcome, ok, type Problem, problem, refuse } from '../floor/problem.js';
import { type Axes, toRoom } from './axes.js';
import { composeStraightCurtain, type StraightCurtain } from './curtain-straight.js';
import type { PartDraft } from './draft.js';
import type { EnclosureContext, EnclosureItems } from './enclosure-items.js';
import { sideLines } from './frame-members.js';
import { stripSide } from './strip-side.js';

/** Distance of the middle of a track or strip rail to the inside of the frame, beside half its own width [m] (common practice). */
export const hangingPlay = 0.005;

/** What hangs on the sides of an enclosure. */
export interface Hanging {
  readonly curtains: ReadonlyMap<SideName, StraightCurtain>;
  readonly strips: ReadonlyMap<SideName, readonly PartDraft[]>;
}

/** How much of the end sides the closures of the long sides take at their two ends [m]: they hang through, the end sides between them. */
interface Trim {
  readonly start: number;
  readonly end: number;
}

const untrimmed: Trim = { start: 0, end: 0 };

/** Depth that a closure takes inside the frame [m]: track or strip with the play on both its sides. */
function depthOf(
  closure: CompleteEnclosure['sides'][SideName]['closure'],
  items: EnclosureItems,
  name: SideName,
): number {
  if (closure === 'curtain') return (items.track?.size[0] ?? 0) + 2 * hangingPlay;
  const cloth = items.closures[name];
  return closure === 'strip' && cloth ? cloth.thickness + 2 * hangingPlay : 0;
}

function trimOf(enclosure: CompleteEnclosure, axes: Axes, items: EnclosureItems, name: SideName): Trim {
  const [low, , high] = axes.sideAt;
  if (name === low || name === high) return untrimmed;
  const depth = (side: SideName) => depthOf(enclosure.sides[side].closure, items, side);
  return { start: depth(low), end: depth(high) };
}

/** Middle line of a hanging closure along the inside of a side, in the own axes. */
export function hangingLine(axes: Axes, name: SideName, offset: number, trim: Trim = untrimmed) {
  const line = sideLines(axes).find((l) => l.name === name)!;
  const across = (line.alongU ? axes.width : axes.length) / 2 - offset;
  const at = (s: number) => (line.alongU ? toRoom(axes, s, line.sign * across) : toRoom(axes, line.sign * across, s));
  return {
    from: at(-line.half + trim.start),
    to: at(line.half - trim.end),
    length: 2 * line.half - trim.start - trim.end,
  };
}

/** Curtain or strips of the sides that have them; mass per metre of side is what the roof beam carries. */
export function hangSides(
  enclosure: CompleteEnclosure,
  index: number,
  axes: Axes,
  items: EnclosureItems,
  { catalogue, rules }: EnclosureContext,
): Outcome<Hanging> {
  const curtains = new Map<SideName, StraightCurtain>();
  const strips = new Map<SideName, readonly PartDraft[]>();
  const problems: Problem[] = [];
  for (const { name } of sideLines(axes)) {
    const { closure } = enclosure.sides[name];
    const cloth = items.closures[name];
    if (cloth?.kind !== 'cloth') continue;
    if (closure === 'strip') {
      strips.set(
        name,
        stripSide({
          of: enclosure.id,
          line: hangingLine(axes, name, hangingPlay + cloth.thickness, trimOf(enclosure, axes, items, name)),
          cloth,
          clearHeight: enclosure.clearHeight,
          hemGap: enclosure.hemGap,
        }),
      );
      continue;
    }
    if (!items.track) {
      problems.push(
        problem(
          'compose/item-missing',
          ['layout', 'enclosures', index],
          'The catalogue has no track.',
          'Add a track to the catalogue.',
        ),
      );
      continue;
    }
    const line = hangingLine(axes, name, hangingPlay + items.track.size[0] / 2, trimOf(enclosure, axes, items, name));
    const curtain = composeStraightCurtain({
      id: `${enclosure.id}-${name}`,
      of: enclosure.id,
      markPrefix: `${enclosure.id}-${name[0]}`.toUpperCase(),
      from: line.from,
      to: line.to,
      // Cross beams end on the long beams at their own height: the track passes below them.
      trackHeight: enclosure.clearHeight - items.track.size[1],
      carrier: enclosure.clearHeight,
      hemGap: enclosure.hemGap,
      cloth,
      track: items.track,
      hung: 'frame',
      catalogue,
      rules,
      rulePrefix: 'compose.enclosure.curtain',
      path: ['layout', 'enclosures', index, 'sides', name],
    });
    if (curtain.ok) curtains.set(name, curtain.value);
    else problems.push(...curtain.problems);
  }
  return problems.length > 0 ? refuse(problems) : ok({ curtains, strips });
}

/** Mass per metre that hangs on the beam of each side [kg/m]. */
export const hungMass = (axes: Axes, { curtains, strips }: Hanging): ReadonlyMap<SideName, number> => {
  const length = (name: SideName) => 2 * sideLines(axes).find((l) => l.name === name)!.half;
  return new Map([
    ...[...curtains].map(([name, c]) => [name, c.mass / length(name)] as const),
    ...[...strips].map(([name, s]) => [name, s.reduce((sum, p) => sum + p.mass, 0) / length(name)] as const),
  ]);
};

export const hangingMass = ({ curtains, strips }: Hanging): number =>
  [...curtains.values()].reduce((sum, c) => sum + c.mass, 0) +
  [...strips.values()].flat().reduce((sum, p) => sum + p.mass, 0);
