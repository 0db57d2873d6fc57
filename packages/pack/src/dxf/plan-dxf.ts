import { add2, type Catalogue, type Design, type Ring, type Vec2 } from '@cloche/engine';
import { DxfWriter, point3d, TextHorizontalAlignment, Units } from '@tarikjabiri/dxf';
import { deviceSymbol } from '../drawing/plan/devices.js';
import { planDimensions } from '../drawing/plan/dimensions.js';
import { barOutline } from '../drawing/plan/enclosures.js';
import { planLabels } from '../drawing/plan/plan-drawing.js';
import { type PlanView, planView } from '../drawing/plan/view.js';
import type { Mark } from '../drawing/types.js';
import { dxfLayers, dxfLineTypes, type LayerKey } from './layers.js';

const mm = (metres: number) => metres * 1000;
const at = (p: Vec2) => point3d(mm(p[0]), mm(p[1]), 0);
const degrees = (angle: number) => (angle * 180) / Math.PI;

/** Draws on named layers in model space, full size in millimetres. */
class Pencil {
  readonly writer: DxfWriter;
  readonly scale: number;

  constructor(writer: DxfWriter, scale: number) {
    this.writer = writer;
    this.scale = scale;
  }

  polyline(layer: LayerKey, points: readonly Vec2[], closed: boolean): void {
    const vertices = points.map((p) => ({ point: { x: mm(p[0]), y: mm(p[1]) } }));
    this.writer.addLWPolyline(vertices, { flags: closed ? 1 : 0, layerName: dxfLayers[layer].name });
  }
  ring(layer: LayerKey, outline: Ring): void {
    this.polyline(layer, outline, true);
  }
  line(layer: LayerKey, from: Vec2, to: Vec2): void {
    this.writer.addLine(at(from), at(to), { layerName: dxfLayers[layer].name });
  }
  circle(layer: LayerKey, centre: Vec2, radius: number): void {
    this.writer.addCircle(at(centre), mm(radius), { layerName: dxfLayers[layer].name });
  }
  /** Counter-clockwise from `start` to `end` [rad]. */
  arc(layer: LayerKey, centre: Vec2, radius: number, start: number, end: number): void {
    const turn = (angle: number) => ((degrees(angle) % 360) + 360) % 360;
    this.writer.addArc(at(centre), mm(radius), turn(start), turn(end), { layerName: dxfLayers[layer].name });
  }
  /** Text whose capitals are `height` mm on paper at the scale of the plan. */
  text(
    layer: LayerKey,
    place: Vec2,
    words: string,
    height: number,
    align: 'start' | 'middle' | 'end' = 'start',
    turn = 0,
  ): void {
    const horizontal = {
      start: TextHorizontalAlignment.Left,
      middle: TextHorizontalAlignment.Center,
      end: TextHorizontalAlignment.Right,
    };
    this.writer.addText(at(place), height * this.scale, oneLine(words), {
      layerName: dxfLayers[layer].name,
      rotation: degrees(turn),
      ...(align === 'start' ? {} : { horizontalAlignment: horizontal[align], secondAlignmentPoint: at(place) }),
    });
  }
}

/** A tag is one line of the file: a line break in a name would start a false tag. */
const oneLine = (words: string): string => words.replace(/[\u2009\u202f]/g, ' ').replace(/[\r\n]+/g, ' ');

function drawRoom(pencil: Pencil, { room, equipment }: Design): void {
  pencil.ring('wall', room.outline);
  for (const window of room.windows) pencil.line('window', window.from, window.to);
  for (const board of room.boards) pencil.line('board', board.from, board.to);
  for (const column of room.columns) pencil.ring('column', column.outline);
  for (const beam of room.beams) pencil.ring('beam', beam.outline);
  for (const solid of [...room.obstructions, ...equipment]) {
    pencil.ring('furniture', solid.outline);
  }
  for (const door of room.doors) {
    pencil.line('door', door.from, door.to);
    for (const leaf of door.leaves) {
      const tip: Vec2 = [Math.cos(leaf.open) * leaf.leaf, Math.sin(leaf.open) * leaf.leaf];
      pencil.line('door', leaf.hinge, add2(leaf.hinge, tip));
      const turn = Math.atan2(Math.sin(leaf.open - leaf.closed), Math.cos(leaf.open - leaf.closed));
      const [start, end] = turn > 0 ? [leaf.closed, leaf.open] : [leaf.open, leaf.closed];
      pencil.arc('door', leaf.hinge, leaf.leaf, start, end);
    }
  }
  for (const sprinkler of room.sprinklers) pencil.circle('fire', sprinkler.at, 0.06);
  for (const detector of room.detectors) pencil.circle('fire', detector.at, 0.1);
  for (const terminal of room.airTerminals) {
    const [w, h] = [terminal.size[0] / 2, terminal.size[1] / 2];
    const [x, y] = terminal.at;
    pencil.ring('air', [
      [x - w, y - h],
      [x + w, y - h],
      [x + w, y + h],
      [x - w, y + h],
    ]);
    pencil.line('air', [x - w, y - h], [x + w, y + h]);
    if (terminal.kind === 'supply') pencil.line('air', [x - w, y + h], [x + w, y - h]);
  }
}

function drawFitOut(pencil: Pencil, design: Design, catalogue: Catalogue): void {
  for (const table of design.tables) {
    pencil.ring('table', table.outline);
    for (const piece of table.equipment) pencil.ring('furniture', piece.outline);
  }
  for (const part of design.parts)
    if (part.group === 'profiles' && part.shape.shape === 'bar') pencil.ring('frame', barOutline(part.shape));
  for (const enclosure of design.enclosures)
    for (const area of enclosure.unitAreas) {
      pencil.ring('unit', area);
      pencil.line('unit', area[0]!, area[2]!);
      pencil.line('unit', area[1]!, area[3]!);
    }
  for (const run of design.runs) drawRun(pencil, run);
  for (const laser of design.lasers)
    for (const leg of laser.legs) pencil.line('laser', [leg.from[0], leg.from[1]], [leg.to[0], leg.to[1]]);
  for (const device of design.devices) {
    const place: Vec2 = [device.at[0], device.at[1]];
    const layer = device.kind === 'sign' ? 'sign' : 'interlock';
    pencil.circle(layer, place, (2.4 * pencil.scale) / 1000);
    pencil.text(
      layer,
      add2(place, [0, (-1.25 * pencil.scale) / 1000]),
      deviceSymbol(device, catalogue).letter,
      2.5,
      'middle',
    );
  }
}

function drawRun(pencil: Pencil, run: Design['runs'][number]): void {
  for (const segment of run.segments) {
    if (segment.kind === 'straight') {
      pencil.line('track', segment.from, segment.to);
      continue;
    }
    const end = segment.startAngle + segment.sweep;
    const [from, to] = segment.sweep > 0 ? [segment.startAngle, end] : [end, segment.startAngle];
    pencil.arc('track', segment.centre, segment.radius, from, to);
  }
  const closed = run.closed && run.line.length > 2;
  pencil.polyline('curtain', run.line, closed);
  for (const support of run.supports) pencil.circle('support', support.point, 0.04);
}

/** Lines and words of the plan sheet, brought back from paper to the room; cleared grounds stay on paper. */
function fromSheet(pencil: Pencil, marks: readonly Mark[], view: PlanView, layer: LayerKey): void {
  const origin = view.to([0, 0]);
  const back = (x: number, y: number): Vec2 => [
    ((x - origin[0]) * view.scale) / 1000,
    ((origin[1] - y) * view.scale) / 1000,
  ];
  for (const mark of marks) {
    if (mark.mark === 'text') {
      pencil.text(layer, back(mark.at[0], mark.at[1]), mark.text, mark.height, mark.anchor, mark.turn);
      continue;
    }
    if (!mark.pen || mark.fill) continue;
    const numbers = (mark.d.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number);
    const points = Array.from({ length: numbers.length / 2 }, (_, i) => back(numbers[2 * i]!, numbers[2 * i + 1]!));
    for (let i = 0; i + 1 < points.length; i++) pencil.line(layer, points[i]!, points[i + 1]!);
  }
}

function prepare(writer: DxfWriter, view: PlanView): void {
  writer.setUnits(Units.Millimeters);
  writer.setVariable('$MEASUREMENT', { 70: 1 });
  writer.setVariable('$LUNITS', { 70: 2 });
  writer.setVariable('$LUPREC', { 70: 1 });
  writer.setVariable('$AUNITS', { 70: 0 });
  writer.setVariable('$LTSCALE', { 40: 1 });
  for (const [name, pattern] of Object.entries(dxfLineTypes))
    writer.addLType(
      name,
      name.toLowerCase(),
      pattern.map((length) => length * view.scale),
    );
  for (const spec of Object.values(dxfLayers)) {
    const layer = writer.addLayer(spec.name, spec.colour, spec.lineType);
    // The library writes no line weight; group 370 ends the record.
    const dxfy = layer.dxfy.bind(layer);
    layer.dxfy = (dx) => {
      dxfy(dx);
      dx.push(370, spec.weight);
    };
  }
}

/**
 * The plan as DXF (AC1021): model space in full-size millimetres, origin at the room's own, one layer a trade, dimensions as lines and
 * text on a layer of their own.
 * Source: DXF reference of the format's owner as used in the handbook of deliverables 3.2.
 */
export function planDxf(design: Design, catalogue: Catalogue): string {
  const view = planView(design);
  const writer = new DxfWriter();
  prepare(writer, view);
  const pencil = new Pencil(writer, view.scale);
  drawRoom(pencil, design);
  drawFitOut(pencil, design, catalogue);
  fromSheet(pencil, planDimensions(design, view), view, 'dimension');
  fromSheet(pencil, planLabels(design, view), view, 'words');
  const { tl, br } = writer.modelSpace.boundingBox();
  writer.setVariable('$EXTMIN', { 10: tl.x, 20: br.y, 30: 0 });
  writer.setVariable('$EXTMAX', { 10: br.x, 20: tl.y, 30: 0 });
  return writer.stringify();
}
