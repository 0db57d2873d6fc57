import type { Finding } from '../floor/finding.js';
import { between2 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import { diagonalError } from '../room/index.js';
import type { CheckContext } from './context.js';
import { lengthFinding, openFinding } from './room-finding.js';

/** Closing error of the survey, and whether pieces come through the way in. */
export const surveyFindings = (context: CheckContext): Finding[] => [
  ...diagonalFindings(context),
  ...wayInFindings(context),
];

function diagonalFindings(context: CheckContext): Finding[] {
  // Corner numbers are those of the brief; the design may walk the room the other way round.
  const { room } = context.brief;
  return room.diagonals.map((d) => {
    const common = {
      id: `room/diagonal/${d.from}-${d.to}`,
      subject: room.name,
      requirement: `Diagonal from corner ${d.from} to corner ${d.to} closes`,
      decider: 'group' as const,
      required: true,
    };
    const found = diagonalError(room.outline, d);
    if (!found)
      return openFinding({
        ...common,
        message: `The room has no corner ${d.from} or no corner ${d.to}; corners count from 0.`,
      });
    const size = Math.abs(found.error);
    const says = `Measured ${millimetreText(d.measured)}, from the corners ${millimetreText(found.fromCorners)}: they differ by ${millimetreText(size)}`;
    const at = between2(room.outline[d.from]!, room.outline[d.to]!, 0.5);
    if (room.tolerance === undefined || room.tolerance === 0)
      return openFinding({
        ...common,
        at,
        message: `${says}. No tolerance of the survey is given to hold it against.`,
      });
    return lengthFinding({
      ...common,
      at,
      message: `${says}; ${millimetreText(room.tolerance)} are allowed.${size > room.tolerance ? ' Measure the corners again before anything is cut.' : ''}`,
      need: size,
      free: room.tolerance,
      measured: 'tolerance of the survey',
    });
  });
}

/** What cannot be rolled or bent on the way. */
const stiff: ReadonlySet<string> = new Set(['profiles', 'track', 'panels']);

function wayInFindings(context: CheckContext): Finding[] {
  const { wayIn } = context.brief.room;
  if (!wayIn) return [];
  const cut = context.design.parts.filter((p) => stiff.has(p.group) && p.length !== undefined);
  const longest = cut.sort((a, b) => b.length! - a.length!)[0];
  const bar =
    wayIn.longestPiece !== undefined && longest
      ? [
          lengthFinding({
            id: 'room/way-in/longest-piece',
            subject: longest.id,
            requirement: 'Longest piece comes through the way in',
            message: `The longest piece, ${longest.mark ?? longest.item}, is ${millimetreText(longest.length!)} long; ${millimetreText(wayIn.longestPiece)} come through.`,
            need: longest.length!,
            free: wayIn.longestPiece,
            measured: 'longest piece that comes through, as surveyed',
            decider: 'facilities',
            required: true,
          }),
        ]
      : [];
  return [
    ...bar,
    openFinding({
      id: 'room/way-in/turning',
      subject: context.brief.room.name,
      requirement: 'Tables and large parts come through the way in',
      message: `The way in is ${millimetreText(wayIn.width)} wide and ${millimetreText(wayIn.height)} high. How a table or panel turns through it is not computed.`,
      decider: 'facilities',
    }),
  ];
}
