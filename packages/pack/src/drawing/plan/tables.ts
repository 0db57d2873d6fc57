import { add2, type Design, turn2, type Vec2 } from '@cloche/engine';
import { fine, ink, narrow, secondInk, wide } from '../inks.js';
import { clearedText, ring } from '../marks.js';
import type { Mark } from '../types.js';
import type { PlanView } from './view.js';

/** Tables white with a filled corner at their own origin, and what stands on them. */
export function tableMarks(design: Design, view: PlanView): Mark[] {
  return design.tables.flatMap((table) => {
    const own = (x: number, y: number): Vec2 => add2(table.centre, turn2([x, y], table.turn));
    const corner = own(-table.length / 2, -table.width / 2);
    const leg = (4 * view.scale) / 1000;
    const mark = [corner, add2(corner, turn2([leg, 0], table.turn)), add2(corner, turn2([0, leg], table.turn))];
    const equipment = table.equipment.flatMap((piece) => [ring(piece.outline.map(view.to), fine, '#FFFFFF')]);
    // The label stands in the lower left corner of the sheet's reading direction, off the middle where beams run.
    const [x, y] = view.to(own(-table.length / 2 + (7 * view.scale) / 1000, -table.width / 2 + (3 * view.scale) / 1000));
    const turn = readable(table.turn);
    return [
      ring(table.outline.map(view.to), wide, '#FFFFFF', table.id),
      ...equipment,
      ring(mark.map(view.to), narrow, ink),
      ...(turn === table.turn
        ? clearedText([x, y], `${table.name}  ${size(table.length)} × ${size(table.width)} × ${size(table.height)} high`, 2.5, { turn })
        : clearedText(view.to(table.centre), table.name, 2.5, { turn, anchor: 'middle' })),
    ];
  });
}

/** Names of the pieces on the tables, under each piece. */
export function equipmentLabels(design: Design, view: PlanView): Mark[] {
  return design.tables.flatMap((table) =>
    table.equipment.flatMap((piece) => {
      const xs = piece.outline.map((p) => view.to(p)[0]);
      const ys = piece.outline.map((p) => view.to(p)[1]);
      const at = [(Math.min(...xs) + Math.max(...xs)) / 2, Math.max(...ys) + 3.7] as const;
      return clearedText(at, piece.name, 2.5, { anchor: 'middle', colour: secondInk });
    }),
  );
}

const size = (metres: number) => String(Math.round(metres * 1000));

/** The angle, turned by half where needed so that text reads from the bottom or from the right. */
export function readable(angle: number): number {
  const a = Math.atan2(Math.sin(angle), Math.cos(angle));
  if (a > Math.PI / 2 + 1e-9) return a - Math.PI;
  return a <= -Math.PI / 2 - 1e-9 ? a + Math.PI : a;
}
