import { add2, bounds, type Design, turn2, type Vec2 } from '@cloche/engine';
import { fine, ink, narrow, secondInk, wide } from '../inks.js';
import type { LabelPlace, LabelSpace } from '../labels.js';
import { ring, textWidth } from '../marks.js';
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
    return [
      ring(table.outline.map(view.to), wide, '#FFFFFF', table.id),
      ...equipment,
      ring(mark.map(view.to), narrow, ink),
    ];
  });
}

/** Name and size of each table: inside along an edge, else outside; the name alone where there is no room for both. */
export function tableLabels(design: Design, view: PlanView, space: LabelSpace): Mark[] {
  return design.tables.flatMap((table) => {
    const paper = (mm: number) => (mm * view.scale) / 1000;
    const turn = readable(table.turn);
    const own = (x: number, y: number) => view.to(add2(table.centre, turn2([x, y], turn)));
    const flipped = Math.abs(Math.cos(turn - table.turn) - 1) > 1e-9;
    const [x, y] = [table.length / 2, table.width / 2];
    const words = `${table.name}  ${size(table.length)} × ${size(table.width)} × ${size(table.height)} high`;
    const said = textWidth(words, 2.5) + 9 < view.mm(table.length) ? words : table.name;
    // The filled corner stands lower left, or upper right when the text is turned about.
    const low = { at: own(-x + paper(flipped ? 2 : 6.5), -y + paper(2.2)), turn, words: said };
    const high = { at: own(-x + paper(2), y - paper(4.6)), turn, words: said };
    const under = { at: own(-x, -y - paper(4)), turn };
    const over = { at: own(-x, y + paper(1.4)), turn };
    return space.place({
      words,
      height: 2.5,
      places: [low, high, under, over],
      leaderWords: table.name,
      leaderTo: [own(x - paper(3), -y), own(-x + paper(3), y)],
    });
  });
}

/** Names of the pieces on the tables: in each piece or beside it. */
export function equipmentLabels(design: Design, view: PlanView, space: LabelSpace): Mark[] {
  return design.tables.flatMap((table) =>
    table.equipment.flatMap((piece) => {
      const box = bounds(piece.outline.map(view.to));
      const [x, y] = [(box.min[0] + box.max[0]) / 2, (box.min[1] + box.max[1]) / 2 + 1.25];
      const places: LabelPlace[] = [
        { at: [x, y], anchor: 'middle' },
        { at: [x, box.max[1] + 3.6], anchor: 'middle' },
        { at: [x, box.min[1] - 1.2], anchor: 'middle' },
        { at: [box.max[0] + 1.2, y] },
        { at: [box.min[0] - 1.2, y], anchor: 'end' },
      ];
      const fits = textWidth(piece.name, 2.5) + 1 <= box.max[0] - box.min[0];
      const style = { colour: secondInk };
      const leaderTo = [[x, y - 1.25] as const];
      return space.place({ words: piece.name, height: 2.5, style, places: fits ? places : places.slice(1), leaderTo });
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
