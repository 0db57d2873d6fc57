import { bounds, type Catalogue, type Design, signedArea } from '@cloche/engine';
import { secondInk } from '../inks.js';
import { clearedText } from '../marks.js';
import { drawingSpace, frameMargin, papers, titleBlock } from '../paper.js';
import { frameMarks, type SheetFacts, stripMarks, titleBlockMarks } from '../sheet-frame.js';
import type { Layer, Mark, Sheet } from '../types.js';
import { deviceMarks } from './devices.js';
import { planDimensions } from './dimensions.js';
import { enclosureLabels, enclosureMarks } from './enclosures.js';
import { beamLabels, beamMarks } from './lasers.js';
import { legendMarks } from './legend.js';
import { generalNotes, northArrow, notesMarks, scaleBar, statusStamp } from './notes.js';
import { ceilingMarks, roomMarks } from './room.js';
import { runLabels, runMarks } from './runs.js';
import { equipmentLabels, tableMarks } from './tables.js';
import { type PlanView, planView } from './view.js';

export interface PlanOptions {
  readonly catalogue: Catalogue;
  /** What the title block says beyond the design. */
  readonly facts: Omit<SheetFacts, 'scale' | 'title' | 'documentType'>;
}

const layer = (id: string, title: string, marks: readonly Mark[]): Layer => ({ id, title, marks });

function roomLabel(design: Design, view: PlanView): Mark[] {
  const { room } = design;
  const area = Math.abs(signedArea(room.outline)).toFixed(1);
  const words = `${area} m²  ceiling ${(Math.round(room.height * 1000) / 1000).toFixed(3)} (${room.ceiling})`;
  const [x, y] = view.to(bounds(room.outline).min);
  return [
    ...clearedText([x + 3, y - 8], room.name, 3.5, { medium: true }),
    ...clearedText([x + 3, y - 3.4], words, 2.5, { colour: secondInk }),
  ];
}

function stripLayer(design: Design, options: PlanOptions, view: PlanView): Mark[] {
  const size = papers[view.paper];
  const y = size.height - frameMargin.other - titleBlock.height;
  const x = frameMargin.left + 4;
  const roomLeft = size.width - frameMargin.other - titleBlock.width - x;
  const notesWidth = roomLeft * 0.36;
  return [
    ...stripMarks(view.paper),
    ...notesMarks(generalNotes(design), x, y, notesWidth),
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

/** The plan as a sheet in true millimetres, ready to be written as SVG or PDF. */
export function planDrawing(design: Design, options: PlanOptions): Sheet {
  const view = planView(design);
  const space = drawingSpace(view.paper);
  const size = papers[view.paper];
  const facts: SheetFacts = { ...options.facts, scale: view.scale, title: 'Plan', documentType: 'General arrangement drawing' };
  return {
    id: 'plan',
    title: `${design.project.name}: plan`,
    description: description(design, view),
    paper: view.paper,
    width: size.width,
    height: size.height,
    scale: view.scale,
    layers: [
      layer('room', 'Room as surveyed', roomMarks(design, view)),
      layer('tables', 'Tables and equipment', tableMarks(design, view)),
      layer('beams', 'Laser beams', beamMarks(design, view)),
      layer('enclosures', 'Enclosures', enclosureMarks(design, view)),
      layer('runs', 'Curtain runs', runMarks(design, view)),
      layer('ceiling', 'Ceiling', ceilingMarks(design, view)),
      layer('labels', 'Names and piece marks', [
        ...roomLabel(design, view),
        ...equipmentLabels(design, view),
        ...beamLabels(design, view),
        ...enclosureLabels(design, view),
        ...runLabels(design, view),
      ]),
      layer('devices', 'Signs, stops, interlocks, sensors', deviceMarks(design, options.catalogue, view)),
      layer('dimensions', 'Dimensions', planDimensions(design, view)),
      layer('aids', 'North, scale, status', [
        ...northArrow([space.left + 9, space.top + 18]),
        ...scaleBar([space.right - 96, space.bottom - 8], view.scale),
        ...statusStamp([space.right - 4, space.top + 4]),
      ]),
      layer('strip', 'Notes and legend', stripLayer(design, options, view)),
      layer('title-block', 'Frame and title block', [...titleBlockMarks(facts, view.paper), ...frameMarks(view.paper)]),
    ],
  };
}
