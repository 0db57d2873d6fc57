import { edges, segmentsMeet } from '../floor/geometry/polygon.js';
import { distance2, type Vec2 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import { type Problem, problem } from '../floor/problem.js';
import type { Path } from '../reading/path.js';
import { lengthTolerance } from './check-room.js';
import type { Brief, BriefRun } from './schema.js';

/** Curtain runs whose path, openings or hanging cannot be. */
export const runProblems = (brief: Brief): Problem[] =>
  (brief.layout?.runs ?? []).flatMap((run, index) => {
    const path = ['layout', 'runs', index];
    const shape = pathProblems(run, path);
    return [
      ...shape,
      ...carrierProblems(run, path),
      ...heightProblems(run, path, brief.room.height),
      ...(shape.length > 0 ? [] : [...openingProblems(run, path), ...noSupportProblems(run, path)]),
    ];
  });

const legsOf = ({ path, closed = false }: BriefRun): { readonly from: Vec2; readonly to: Vec2 }[] =>
  closed ? edges(path) : edges(path).slice(0, -1);

const lengthOf = (run: BriefRun): number => legsOf(run).reduce((sum, { from, to }) => sum + distance2(from, to), 0);

function pathProblems(run: BriefRun, path: Path): Problem[] {
  const { id, closed = false } = run;
  if (closed && run.path.length < 3)
    return [
      problem(
        'brief/run-too-short',
        [...path, 'path'],
        `Run ${id} is closed and has ${run.path.length} corners; at least 3 are needed.`,
        'Add corners, or leave out closed.',
      ),
    ];
  const repeated = legsOf(run).flatMap(({ from, to }, index) => {
    if (distance2(from, to) > lengthTolerance) return [];
    const closing = index === run.path.length - 1;
    return [
      problem(
        'brief/run-repeats-corner',
        [...path, 'path', closing ? index : index + 1],
        `Run ${id} has two corners at the same point.`,
        closing
          ? 'A closed run returns to its first corner by itself: leave out the last.'
          : 'Leave out one of the two.',
      ),
    ];
  });
  return repeated.length > 0 ? repeated : crossings(run, path);
}

function crossings(run: BriefRun, path: Path): Problem[] {
  const legs = legsOf(run);
  return legs.flatMap((a, i) =>
    legs.slice(i + 2).flatMap((b, k) => {
      const j = i + 2 + k;
      const neighbours = run.closed === true && i === 0 && j === legs.length - 1;
      if (neighbours || !segmentsMeet(a.from, a.to, b.from, b.to)) return [];
      return [
        problem(
          'brief/run-crosses-itself',
          [...path, 'path', j],
          `Run ${run.id} crosses or touches itself: legs ${i} and ${j}.`,
          'Give the corners in order along the track; where tracks branch, make two runs.',
        ),
      ];
    }),
  );
}

function carrierProblems({ id, hung, on }: BriefRun, path: Path): Problem[] {
  if (on !== undefined || (hung !== 'frame' && hung !== 'shelf')) return [];
  const carrier = hung === 'frame' ? 'enclosure' : 'table';
  return [
    problem(
      'brief/run-needs-on',
      path,
      `Run ${id} is hung from a ${hung}, but does not say from which ${carrier}.`,
      `Name the ${carrier} in on.`,
    ),
  ];
}

const heightProblems = ({ id, trackHeight }: BriefRun, path: Path, roomHeight: number): Problem[] =>
  trackHeight <= roomHeight + lengthTolerance
    ? []
    : [
        problem(
          'brief/above-ceiling',
          [...path, 'trackHeight'],
          `The track of run ${id} is at ${millimetreText(trackHeight)}; the room is ${millimetreText(roomHeight)} high.`,
          'Check the height of the track and that of the room.',
        ),
      ];

/** Openings that reach past the ends of the path; a closed path has no ends, but must be longer than the opening. */
function openingProblems(run: BriefRun, path: Path): Problem[] {
  const total = lengthOf(run);
  return (run.openings ?? []).flatMap(({ at, width }, index) => {
    const before = width / 2 - at;
    const after = at + width / 2 - total;
    const excess = run.closed === true ? Math.max(at - total, width - total) : Math.max(before, after);
    if (excess <= lengthTolerance) return [];
    return [
      problem(
        'brief/opening-beyond-run',
        [...path, 'openings', index],
        `The opening of run ${run.id} reaches ${millimetreText(excess)} past the path, which is ${millimetreText(total)} long.`,
        'at is the distance along the path to the middle of the opening.',
      ),
    ];
  });
}

function noSupportProblems(run: BriefRun, path: Path): Problem[] {
  const total = lengthOf(run);
  return (run.noSupport ?? []).flatMap(({ from, to }, index) => {
    if (from < to && to <= total + lengthTolerance) return [];
    return [
      problem(
        'brief/no-support-range',
        [...path, 'noSupport', index],
        `The stretch without support of run ${run.id} goes from ${millimetreText(from)} to ${millimetreText(to)}; the path is ${millimetreText(total)} long.`,
        'Give from and to along the path, the smaller first.',
      ),
    ];
  });
}
