import { edges, selfCrossings, signedArea } from '../floor/geometry/polygon.js';
import { distance2 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import { type Problem, problem } from '../floor/problem.js';
import type { Path } from '../reading/path.js';
import type { Brief } from './schema.js';

/** Lengths written in different units differ in the last digits; a tenth of a micrometre is nothing in a building. */
export const lengthTolerance = 1e-7;

/** Corners that repeat, walls that cross, an outline without area. */
export function outlineProblems({ room }: Brief): Problem[] {
  const { outline } = room;
  const repeated = outline.flatMap((corner, index) => {
    const next = (index + 1) % outline.length;
    if (distance2(corner, outline[next]!) > lengthTolerance) return [];
    const last = next === 0;
    return [
      problem(
        'brief/repeated-corner',
        ['room', 'outline', last ? index : next],
        `Corners ${index} and ${next} of the room are the same point.`,
        last ? 'The outline closes by itself: leave out the last corner.' : 'Leave out one of the two.',
      ),
    ];
  });
  if (repeated.length > 0) return repeated;
  const crossed = selfCrossings(outline).map(([a, b]) =>
    problem(
      'brief/room-crosses-itself',
      ['room', 'outline', b],
      `Wall ${a} (from corner ${a}) and wall ${b} (from corner ${b}) of the room cross or touch.`,
      'Give the corners in order round the room, with the x before the y of each.',
    ),
  );
  if (crossed.length > 0 || Math.abs(signedArea(outline)) > lengthTolerance) return crossed;
  return [
    problem(
      'brief/room-without-area',
      ['room', 'outline'],
      'The outline of the room has no area.',
      'Check its corners.',
    ),
  ];
}

interface OnWall {
  readonly what: string;
  readonly path: Path;
  readonly wall: number;
  readonly at: number;
  readonly width: number;
  readonly top?: number;
}

function thingsOnWalls({ room }: Brief): OnWall[] {
  const { doors = [], windows = [], boards = [] } = room;
  return [
    ...doors.map((d, i) => ({ ...d, what: `door ${d.id}`, path: ['room', 'doors', i], top: d.height })),
    ...windows.map((w, i) => ({ ...w, what: `window ${w.id}`, path: ['room', 'windows', i], top: w.sill + w.height })),
    ...boards.map((b, i) => ({ ...b, what: `board ${b.id}`, path: ['room', 'boards', i] })),
  ];
}

/** Doors, windows and boards that stand on no wall, or reach past its end or the ceiling. */
export function wallProblems(brief: Brief): Problem[] {
  const walls = edges(brief.room.outline);
  return thingsOnWalls(brief).flatMap(({ what, path, wall, at, width, top }) => {
    const found: Problem[] = [];
    const edge = walls[wall];
    if (!edge)
      return [
        problem(
          'brief/no-such-wall',
          [...path, 'wall'],
          `Wall ${wall} of the ${what} does not exist: the room has walls 0 to ${walls.length - 1}.`,
          'A wall has the number of the corner that it starts from, counted from 0.',
        ),
      ];
    const length = distance2(edge.from, edge.to);
    const excess = at + width - length;
    if (excess > lengthTolerance)
      found.push(
        problem(
          'brief/beyond-wall',
          [...path, 'at'],
          `The ${what} reaches ${millimetreText(excess)} past the end of wall ${wall}, which is ${millimetreText(length)} long.`,
          `Check at, width and wall; at is measured from corner ${wall} to the near edge.`,
        ),
      );
    if (top !== undefined && top - brief.room.height > lengthTolerance)
      found.push(
        problem(
          'brief/above-ceiling',
          [...path, 'height'],
          `The ${what} reaches up to ${millimetreText(top)}; the room is ${millimetreText(brief.room.height)} high.`,
          'Check its height and that of the room.',
        ),
      );
    return found;
  });
}

/** Diagonals between corners that do not exist or are the same. */
export const diagonalProblems = ({ room }: Brief): Problem[] =>
  (room.diagonals ?? []).flatMap((diagonal, index) => {
    const path = ['room', 'diagonals', index];
    const missing = (['from', 'to'] as const).flatMap((end) =>
      diagonal[end] < room.outline.length
        ? []
        : [
            problem(
              'brief/no-such-corner',
              [...path, end],
              `Corner ${diagonal[end]} does not exist: the room has corners 0 to ${room.outline.length - 1}.`,
              'Corners are counted from 0 in the order of the outline.',
            ),
          ],
    );
    if (missing.length > 0 || diagonal.from !== diagonal.to) return missing;
    return [
      problem(
        'brief/no-such-corner',
        [...path, 'to'],
        `The diagonal starts and ends at corner ${diagonal.from}.`,
        'Name the two corners it was measured between.',
      ),
    ];
  });

/** A column is round or has two sides, not both and not neither. */
export const columnProblems = ({ room }: Brief): Problem[] =>
  (room.columns ?? []).flatMap(({ id, size, diameter }, index) =>
    (size === undefined) !== (diameter === undefined)
      ? []
      : [
          problem(
            'brief/column-size',
            ['room', 'columns', index],
            size === undefined ? `Column ${id} has no size.` : `Column ${id} has a size and a diameter.`,
            'Give size (two lengths) for a rectangular column or diameter for a round one.',
          ),
        ],
  );

/** Pairs of values that must rise. */
export function orderProblems(brief: Brief): Problem[] {
  const { obstructions = [], ceiling, height } = brief.room;
  const no = (path: Path, message: string, hint: string) => problem('brief/wrong-order', path, message, hint);
  const ranges = (brief.lasers ?? []).flatMap((laser, index) => {
    const { emission } = laser;
    const pulse = emission.kind === 'pulsed' ? emission.durationRange : undefined;
    return [
      { path: ['lasers', index, 'wavelengthRange'], range: laser.wavelengthRange },
      { path: ['lasers', index, 'emission', 'durationRange'], range: pulse },
    ].flatMap(({ path, range }) =>
      range === undefined || range[0] <= range[1]
        ? []
        : [no(path, `The range of laser ${laser.id} falls.`, 'Give the smaller value first.')],
    );
  });
  const heights = obstructions.flatMap(({ id, from = 0, to }, index) =>
    from < to
      ? []
      : [
          no(
            ['room', 'obstructions', index, 'from'],
            `Obstruction ${id} starts at ${millimetreText(from)} and ends at ${millimetreText(to)} above the floor.`,
            'Give the lower height in from, the upper in to.',
          ),
        ],
  );
  const structure = ceiling?.structureHeight;
  const low =
    structure !== undefined && structure < height - lengthTolerance
      ? [
          no(
            ['room', 'ceiling', 'structureHeight'],
            `What can carry is at ${millimetreText(structure)}, below the ceiling at ${millimetreText(height)}.`,
            'The structure is level with the ceiling or above it: check both heights.',
          ),
        ]
      : [];
  return [...ranges, ...heights, ...low];
}
