import type { DesignBoard } from '../design/types.js';
import type { Finding } from '../floor/finding.js';
import { add2, between2, distance2, scale2, sub2, unit2 } from '../floor/geometry/vec.js';
import { millimetreText, numberText } from '../floor/number-text.js';
import { clearStrip, type Obstacle, roomCautions, workingSpace } from '../room/index.js';
import type { RuleId } from '../rules/known.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';
import { lengthFinding, openFinding } from './room-finding.js';
import { nameOf, obstaclesOf, type PlanThing, planThings } from './room-plan.js';

/** Voltage to ground up to which the smaller depth holds [V]. Source: 29 CFR 1910.303(g)(1)(i), Table S-1 (read). */
const lowVoltage = 150;
const conditions = { 'nothing grounded': 'A', grounded: 'B', live: 'C' } as const;

/** The box before each electrical board that must stay free. */
export const boardFindings = (context: CheckContext): Finding[] => {
  const things = planThings(context.design);
  return context.design.room.boards.map((board) => boardFinding(context, board, things));
};

function boardFinding(context: CheckContext, board: DesignBoard, things: readonly PlanThing[]): Finding {
  const { rules, design } = context;
  const rule: RuleId = board.voltsToGround <= lowVoltage ? 'electric.board-depth-low' : 'electric.board-depth';
  const need = ruleNumber(rules, rule);
  const height = ruleNumber(rules, 'electric.board-height');
  const common = {
    id: `room/board/${board.id}`,
    subject: board.id,
    requirement: `Clear space before ${board.name}`,
    decider: 'electrician' as const,
    required: true,
    cautions: [roomCautions.electric],
    at: between2(board.from, board.to, 0.5),
    rule: ruleUsed(rules, rule),
  };
  const table = workingSpace(board.voltsToGround, conditions[board.opposite]);
  if (!table.ok) return openFinding({ ...common, message: table.problems[0]!.message });
  const obstacles = things.filter((t) => t.bottom < height).flatMap(obstaclesOf);
  const width = Math.max(ruleNumber(rules, 'electric.board-width'), board.width);
  const place = widestPlace(board, width, obstacles, design.room.outline);
  const found = `${millimetreText(place.width)} are free before ${board.name} up to ${nameOf(context.design, place.b)}, over a width of ${millimetreText(width)} and ${millimetreText(height)} high; ${millimetreText(need)} are needed.`;
  const more = table.value.depthPrinted > need && place.width >= need && place.width < table.value.depth;
  const note = more
    ? ` With ${board.opposite === 'live' ? 'live' : 'grounded'} parts opposite and ${numberText(board.voltsToGround)} V, 29 CFR 1910.303 asks for ${millimetreText(table.value.depth)}: ask the electrician.`
    : '';
  return lengthFinding({
    ...common,
    message: found + note,
    need,
    free: place.width,
    measured: `free from the board to ${nameOf(context.design, place.b)}`,
    ...(more ? { verdict: 'attention' as const } : {}),
    assumptions: [
      'The clear width may lie to either side of the middle of the board, as long as it holds the whole board.',
    ],
  });
}

/** The clear width may be shifted along the wall as long as it holds the board: middle, and flush with either end. */
function widestPlace(
  board: DesignBoard,
  width: number,
  obstacles: readonly Obstacle[],
  room: CheckContext['design']['room']['outline'],
) {
  const along = unit2(sub2(board.to, board.from));
  const spare = width - distance2(board.from, board.to);
  const places = [spare / 2, 0, spare].map((shift) => {
    const from = add2(board.from, scale2(along, -shift));
    // Half a millimetre off the wall, so that the wall of the board does not face it.
    const off = scale2(board.inward, 5e-4);
    const side = {
      id: board.id,
      from: add2(from, off),
      to: add2(add2(from, scale2(along, width)), off),
      outward: board.inward,
    };
    const place = clearStrip(side, obstacles, room);
    return { ...place, width: place.width + 5e-4 };
  });
  return places.sort((a, b) => b.width - a.width)[0]!;
}
