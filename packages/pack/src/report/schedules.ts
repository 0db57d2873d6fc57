import type { Catalogue, Design, DesignEnclosure, Finding, Part, Vec2 } from '@cloche/engine';
import { secondInk } from '../drawing/inks.js';
import { type Hanging, type HangingPiece, hangings } from '../parts/hangings.js';
import type { Flow, TableColumn } from './flow.js';
import { amountText } from './words.js';

const mm = (metres: number): string => String(Math.round(metres * 1000));
const mmOrNone = (metres: number | null): string => (metres === null ? '' : mm(metres));
const pointWords = (p: Vec2): string => `x ${mm(p[0])}, y ${mm(p[1])}`;

interface Point {
  readonly mark: string;
  readonly what: string;
  readonly at: Vec2;
}

const pointColumns: readonly TableColumn<Point>[] = [
  { head: 'mark', share: 26, medium: true, of: (p) => p.mark },
  { head: 'what', share: 34, of: (p) => p.what },
  { head: 'x mm', share: 20, align: 'right', medium: true, of: (p) => mm(p.at[0]) },
  { head: 'y mm', share: 20, align: 'right', medium: true, of: (p) => mm(p.at[1]) },
];

/** Where the frames stand, with a measure across to check the square by. */
export function settingOutSection(flow: Flow, design: Design): void {
  if (design.enclosures.length === 0) return;
  flow.heading('Setting out');
  flow.words(
    'Millimetres from the inside south-west corner of the room: x east along the south wall, y north along the west wall. Measure both diagonals over the outside of the frame before the joints are made tight: they must agree with each other and with the figure given.',
    { size: 8.5, colour: secondInk, after: 5 },
  );
  for (const enclosure of design.enclosures) settingOut(flow, design, enclosure);
}

function settingOut(flow: Flow, design: Design, enclosure: DesignEnclosure): void {
  const { length, width } = enclosure;
  flow.subheading(enclosure.name);
  flow.words(
    `Outside of the frame ${mm(length)} × ${mm(width)}, diagonal ${mm(Math.hypot(length, width))} (square root of ${mm(length)}² + ${mm(width)}²). Inside ${mm(enclosure.insideLength)} × ${mm(enclosure.insideWidth)}. Clear height ${mm(enclosure.clearHeight)}, top of the frame ${mm(enclosure.frameTop)}, top of everything ${mm(enclosure.top)} above the finished floor.`,
    { size: 8.5, after: 4 },
  );
  const corners = enclosure.outline.map((at): Point => ({ mark: '', what: 'corner, outside of the frame', at }));
  const posts = design.parts.filter((part) => part.of === enclosure.id && part.role === 'post').flatMap(postPoint);
  flow.table(pointColumns, [...posts, ...corners], 8);
}

const postPoint = (part: Part): Point[] =>
  part.shape.shape === 'bar'
    ? [{ mark: part.mark ?? '', what: 'post, middle', at: [part.shape.from[0], part.shape.from[1]] }]
    : [];

const panelColumns: readonly TableColumn<HangingPiece>[] = [
  { head: 'mark', share: 21, medium: true, of: (p) => p.mark },
  { head: 'panel', share: 22, of: (p) => p.name },
  { head: 'flat width mm', share: 10, align: 'right', of: (p) => mmOrNone(p.width) },
  { head: 'drop mm', share: 8, align: 'right', of: (p) => mmOrNone(p.length) },
  { head: 'count', share: 6, align: 'right', medium: true, of: (p) => String(p.count) },
  { head: 'remark', share: 34, of: (p) => p.note },
];

/** `2 × Stop, end, track; 3 × Weight, hem, chain 3000 mm`. */
const piecesWords = (pieces: readonly HangingPiece[]): string =>
  pieces
    .map(({ count, name, mark, length }) =>
      [`${count} ×`, mark, name, length === null ? '' : `${mm(length)} mm`].filter((words) => words !== '').join(' '),
    )
    .join('; ');

/** What hangs where: cloth, track, fittings and the places of the supports, for each track. */
export function curtainSection(flow: Flow, design: Design, catalogue: Catalogue, findings: readonly Finding[]): void {
  const all = hangings(design, catalogue);
  if (all.length === 0) return;
  flow.heading('Curtain schedule');
  flow.words(
    'Widths are those of the flat cloth. Supports are given along the track from its start; the start is measured from the inside south-west corner of the room. Fixings and what they are fixed to are decided by a licensed engineer.',
    { size: 8.5, colour: secondInk, after: 3 },
  );
  for (const hanging of all) hangingBlock(flow, hanging, loadOf(hanging, findings));
}

const loadOf = (hanging: Hanging, findings: readonly Finding[]): Finding | undefined =>
  findings.find((f) => f.id === `curtain/support-load/${hanging.id}`);

function hangingBlock(flow: Flow, hanging: Hanging, load: Finding | undefined): void {
  flow.subheading(hanging.name);
  const track = hanging.trackHeight === null ? '' : `Track at ${mm(hanging.trackHeight)} above the floor. `;
  flow.words(`${track}Hem gap ${mm(hanging.hemGap)}.`, { size: 8.5, after: 3 });
  flow.table(panelColumns, hanging.panels, 7.5);
  flow.y -= 3;
  if (hanging.track.length > 0)
    flow.words(`Track from its start: ${piecesWords(hanging.track)}.`, { size: 8.5, after: 2 });
  if (hanging.fittings.length > 0) flow.words(`With it: ${piecesWords(hanging.fittings)}.`, { size: 8.5, after: 2 });
  for (const support of hanging.supports) {
    const start = hanging.start ? ` from ${pointWords(hanging.start)}` : '';
    const places = support.at.length === 0 ? '' : `, along the track${start}: ${support.at.map(mm).join(', ')}`;
    flow.words(`Supports ${support.mark}, ${support.name}${places}.`, { size: 8.5, after: 2 });
  }
  if (load && load.demand !== null && load.capacity !== null)
    flow.words(
      `Largest load on one support ${amountText(load.demand, load.unit)} of ${amountText(load.capacity, load.unit)} (${load.verdict}).`,
      { size: 8.5, after: 2 },
    );
}
