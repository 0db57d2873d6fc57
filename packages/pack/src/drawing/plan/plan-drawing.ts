import { bounds, type Catalogue, contains, type Design, signedArea } from '@cloche/engine';
import { inflated } from '../ground.js';
import { secondInk } from '../inks.js';
import { LabelSpace } from '../labels.js';
import { textWidth } from '../marks.js';
import { drawingSpace, frameMargin, papers, titleBlock } from '../paper.js';
import { frameMarks, type SheetFacts, stripMarks, titleBlockMarks } from '../sheet-frame.js';
import { shortens } from '../short-mark.js';
import type { Layer, Mark, PaperPoint, Sheet } from '../types.js';
import { deviceMarks, devicePlaces } from './devices.js';
import { planDimensions } from './dimensions.js';
import { enclosureLabels, enclosureMarks } from './enclosures.js';
import { beamLabels, beamMarks } from './lasers.js';
import { legendMarks } from './legend.js';
import { generalNotes, northArrow, notesMarks, scaleBar, statusStamp } from './notes.js';
import { ceilingMarks, roomLabels, roomMarks } from './room.js';
import { runLabels, runMarks, runPanelLabels } from './runs.js';
import { equipmentLabels, tableLabels, tableMarks } from './tables.js';
import { type PlanView, planView } from './view.js';

export interface PlanOptions {
  readonly catalogue: Catalogue;
  /** What the title block says beyond the design. */
  readonly facts: Omit<SheetFacts, 'scale' | 'title' | 'documentType'>;
}

const layer = (id: string, title: string, marks: readonly Mark[]): Layer => ({ id, title, marks });

/** Name of the room with area and ceiling, in the first free corner of its outline. */
function roomName(design: Design, view: PlanView, space: LabelSpace): Mark[] {
  const { room } = design;
  const area = Math.abs(signedArea(room.outline)).toFixed(1);
  const words = `${area} m²  ceiling ${(Math.round(room.height * 1000) / 1000).toFixed(3)} (${room.ceiling})`;
  const box = bounds(room.outline.map(view.to));
  const width = textWidth(words, 2.5);
  const [left, right] = [box.min[0] + 3, box.max[0] - 3 - width];
  const [low, high] = [box.max[1] - 8, box.min[1] + 6.5];
  const corners: PaperPoint[] = [
    [left, low],
    [right, low],
    [left, high],
    [right, high],
  ];
  const inner = [0.25, 0.5, 0.75].flatMap((up) =>
    [0, 0.25, 0.5, 0.75, 1].map((along): PaperPoint => [left + (right - left) * along, low + (high - low) * up]),
  );
  const outline = room.outline.map(view.to);
  const within = ([x, y]: PaperPoint) => [x, x + width].every((end) => contains(outline, [end, y]));
  const places = [...corners, ...inner].filter(within).map((at) => ({ at }));
  const style = { medium: true };
  return space.place({ words: room.name, height: 3.5, style, under: { words, colour: secondInk }, places });
}

/** All names and piece marks, those first that have least choice; symbols and lines keep their ground. */
export function planLabels(design: Design, view: PlanView): Mark[] {
  const sheet = drawingSpace(view.paper);
  const space = new LabelSpace(inflated(sheet, -1));
  for (const { marks } of planThings(design, view)) space.keepClear(marks);
  space.keepClear(planDimensions(design, view));
  for (const { at } of devicePlaces(design, view)) space.take(at, 2.4);
  for (const sign of design.room.exitSigns) space.take(view.to(sign.at), 4.8, 2.2);
  for (const detector of design.room.detectors) space.take(view.to(detector.at), 2.3);
  for (const sprinkler of design.room.sprinklers) space.take(view.to(sprinkler.at), 1.6);
  return [
    ...roomLabels(design, view, space),
    ...enclosureLabels(design, view, space),
    ...runPanelLabels(design, view, space),
    ...tableLabels(design, view, space),
    ...runLabels(design, view, space),
    ...beamLabels(design, view, space),
    ...equipmentLabels(design, view, space),
    ...roomName(design, view, space),
  ];
}

function stripLayer(design: Design, options: PlanOptions, view: PlanView): Mark[] {
  const size = papers[view.paper];
  const y = size.height - frameMargin.other - titleBlock.height;
  const x = frameMargin.left + 4;
  const roomLeft = size.width - frameMargin.other - titleBlock.width - x;
  const notesWidth = roomLeft * 0.36;
  // The strip holds seven lines of notes beside the legend: marks are explained in the shortest words here.
  const notes = [
    ...generalNotes(design),
    ...(shortens(design.parts) ? ['Piece marks without the name in front.'] : []),
  ];
  return [
    ...stripMarks(view.paper),
    ...notesMarks(notes, x, y, notesWidth),
    ...legendMarks(design, options.catalogue, x + notesWidth + 5, y, roomLeft - notesWidth - 5, titleBlock.height),
  ];
}

const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

function description(design: Design, view: PlanView): string {
  const { tables, enclosures, runs, lasers } = design;
  const things = [
    counted(tables.length, 'table', 'tables'),
    counted(enclosures.length, 'enclosure', 'enclosures'),
    counted(runs.length, 'curtain run', 'curtain runs'),
    counted(lasers.length, 'laser', 'lasers'),
  ];
  return `Plan of ${design.room.name} at 1:${view.scale}: ${things.join(', ')}. Not approved.`;
}

/** Everything that is drawn before its names. */
const planThings = (design: Design, view: PlanView): Layer[] => [
  layer('room', 'Room as surveyed', roomMarks(design, view)),
  layer('tables', 'Tables and equipment', tableMarks(design, view)),
  layer('beams', 'Laser beams', beamMarks(design, view)),
  layer('enclosures', 'Enclosures', enclosureMarks(design, view)),
  layer('runs', 'Curtain runs', runMarks(design, view)),
  layer('ceiling', 'Ceiling', ceilingMarks(design, view)),
];

/** The plan as a sheet in true millimetres, ready to be written as SVG or PDF. */
export function planDrawing(design: Design, options: PlanOptions): Sheet {
  const view = planView(design);
  const space = drawingSpace(view.paper);
  const size = papers[view.paper];
  const facts: SheetFacts = {
    ...options.facts,
    scale: view.scale,
    title: 'Plan',
    documentType: 'General arrangement drawing',
  };
  return {
    id: 'plan',
    title: `${design.project.name}: plan`,
    description: description(design, view),
    paper: view.paper,
    width: size.width,
    height: size.height,
    scale: view.scale,
    layers: [
      ...planThings(design, view),
      layer('dimensions', 'Dimensions', planDimensions(design, view)),
      layer('labels', 'Names and piece marks', planLabels(design, view)),
      layer('devices', 'Signs, stops, interlocks, sensors', deviceMarks(design, options.catalogue, view)),
      layer('aids', 'North, scale, status', [
        ...northArrow([space.left + 9, space.top + 18]),
        ...scaleBar([space.right - 4, space.bottom - 8], view.scale),
        ...statusStamp([space.right - 4, space.top + 4]),
      ]),
      layer('strip', 'Notes and legend', stripLayer(design, options, view)),
      layer('title-block', 'Frame and title block', [...titleBlockMarks(facts, view.paper), ...frameMarks(view.paper)]),
    ],
  };
}
