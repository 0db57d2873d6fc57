import { bounds, type Design, type DesignEnclosure, type Part, type Vec2 } from '@cloche/engine';
import { dimensionChain, distinctStops } from '../dimension.js';
import { type Box, inflated } from '../ground.js';
import { byOthers, hairline, ink, narrow, secondInk, symbol, wash, wide } from '../inks.js';
import { type Label, type LabelPlace, LabelSpace } from '../labels.js';
import { line, ring, text } from '../marks.js';
import { drawingSpace, frameMargin, type PaperName, papers, titleBlock } from '../paper.js';
import { generalNotes, notesMarks, scaleBar, statusStamp } from '../plan/notes.js';
import { fittingScale } from '../scale.js';
import { frameMarks, type SheetFacts, stripMarks, titleBlockMarks } from '../sheet-frame.js';
import { shortens, shortMark, shortMarkNote } from '../short-mark.js';
import type { Layer, Mark, PaperPoint, Pen, Sheet } from '../types.js';
import { type ElevationName, type Face, faceOf, inElevation } from './view.js';

interface Placed {
  readonly name: ElevationName;
  /** Half of the width that the view takes [m]. */
  readonly half: number;
  readonly to: (p: Vec2) => PaperPoint;
}

const viewLetter: Readonly<Record<ElevationName, string>> = { front: 'A', side: 'B' };
const viewTitle: Readonly<Record<ElevationName, string>> = { front: 'front, from south', side: 'side, from east' };

const penOf = (part: Part): Pen => (part.group === 'profiles' ? symbol : narrow);
const fillOf = (part: Part): string | undefined => {
  if (part.group === 'fan filter units') return wash;
  return part.group === 'profiles' ? '#FFFFFF' : undefined;
};

/** Faces of the near half, far ones first, so that what stands in front covers what stands behind. */
function nearFaces(design: Design, enclosure: DesignEnclosure, name: ElevationName): Face[] {
  return design.parts
    .filter((part) => part.of === enclosure.id)
    .flatMap((part) => faceOf(enclosure, name, part) ?? [])
    .filter((face) => face.nearness > -0.05)
    .sort((a, b) => a.nearness - b.nearness);
}

interface Marked {
  readonly mark: string;
  readonly box: Box;
}

/** Nothing thinner than a letter carries its mark on itself [mm on paper]. */
const thin = 2.2;

const opaque = (face: Face): boolean => face.part.group === 'profiles' || face.part.group === 'fan filter units';

/** Pieces in sight with their marks, nearest first: not those behind a bar of the same outline, nor the ends of bars. */
function markedFaces(faces: readonly Face[], view: Placed): Marked[] {
  const seen = new Set<string>();
  const before: Box[] = [];
  return [...faces].reverse().flatMap((face) => {
    const mark = shortMark(face.part);
    const { min, max } = bounds(face.outline.map(view.to));
    const box = { left: min[0], right: max[0], top: min[1], bottom: max[1] };
    const hidden = before.some((near) => within(box, inflated(near, 0.5)));
    if (opaque(face)) before.push(box);
    const key = `${mark} ${[box.left, box.right, box.top, box.bottom].map((c) => Math.round(c)).join(' ')}`;
    const end = max[0] - min[0] < 4.5 && max[1] - min[1] < 4.5;
    if (!mark || hidden || end || seen.has(key)) return [];
    seen.add(key);
    return [{ mark, box }];
  });
}

const within = (a: Box, b: Box): boolean =>
  a.left >= b.left && a.right <= b.right && a.top >= b.top && a.bottom <= b.bottom;

/** More equal pieces than this in one view are marked once, with their count. */
const mostEqual = 6;

/**
 * Each piece of the view with its mark, at the first free place along it; edges of sheets and cloth by one leader for each mark, many equal
 * pieces by one mark with their count.
 */
function markLabels(marked: readonly Marked[], space: LabelSpace): Mark[] {
  const edge = ({ box }: Marked) => Math.min(box.right - box.left, box.bottom - box.top) < thin;
  const edges = marked.filter(edge);
  const whole = marked.filter((m) => !edge(m));
  const counts = new Map<string, number>();
  for (const { mark } of whole) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  const once = new Set<string>();
  const onPieces = whole.flatMap(({ mark, box }) => {
    const count = counts.get(mark)!;
    if (count <= mostEqual) return space.place(onPiece(mark, box));
    if (once.has(mark)) return [];
    once.add(mark);
    return space.place(onPiece(`${count} × ${mark}`, box));
  });
  const led = edges.flatMap(({ mark, box }) => {
    if (once.has(mark) || counts.has(mark)) return [];
    once.add(mark);
    const [x, y] = [(box.left + box.right) / 2, box.top + (box.bottom - box.top) * 0.25];
    const upright = box.bottom - box.top > box.right - box.left;
    return space.place({
      words: mark,
      height: 2.5,
      places: [],
      leaderTo: upright
        ? [[x, y]]
        : [
            [x, y],
            [box.left + 3, y],
            [box.right - 3, y],
          ],
    });
  });
  return [...onPieces, ...led];
}

function onPiece(words: string, { left, right, top, bottom }: Box): Label {
  const upright = bottom - top > 2 * (right - left);
  const on = (share: number): LabelPlace =>
    upright
      ? { at: [(left + right) / 2 + 1.25, top + (bottom - top) * share], anchor: 'middle', turn: Math.PI / 2 }
      : { at: [left + (right - left) * share, (top + bottom) / 2 + 1.25], anchor: 'middle' };
  return { words, height: 2.5, places: [0.5, 0.35, 0.65, 0.2, 0.8].map(on) };
}

interface SeenTable {
  readonly name: string;
  readonly outline: readonly PaperPoint[];
}

function seenTables(design: Design, enclosure: DesignEnclosure, view: Placed): SeenTable[] {
  return design.tables
    .filter((table) => enclosure.tables.includes(table.id))
    .map((table) => {
      const across = table.outline.map((p) => inElevation(enclosure, view.name, [p[0], p[1], 0])[0]);
      const [left, right] = [Math.min(...across), Math.max(...across)];
      const outline: Vec2[] = [
        [left, 0],
        [right, 0],
        [right, table.height],
        [left, table.height],
      ];
      return { name: table.name, outline: outline.map(view.to) };
    });
}

/** Names of tables, low on them: the marks of what hangs before them stand higher. */
function tableName({ name, outline }: SeenTable): Label {
  const { min, max } = bounds(outline);
  const at = (along: number, up: number): LabelPlace => ({
    at: [min[0] + (max[0] - min[0]) * along, max[1] - (max[1] - min[1]) * up],
    anchor: 'middle',
  });
  const places = [0.3, 0.6, 0.15, 0.8].flatMap((up) => [0.5, 0.3, 0.7].map((along) => at(along, up)));
  return { words: name, height: 2.5, style: { colour: secondInk }, places };
}

function dimensions(faces: readonly Face[], enclosure: DesignEnclosure, view: Placed): Mark[] {
  const profiles = faces.filter((face) => face.part.group === 'profiles');
  const uprights = profiles.filter((face) => face.part.role === 'post').map((face) => bounds(face.outline as Vec2[]));
  const ends = uprights.flatMap((box) => [box.min[0], box.max[0]]);
  const outer = ends.length > 0 ? [Math.min(...ends), Math.max(...ends)] : [-view.half, view.half];
  const between = uprights
    .map((box) => (box.min[0] + box.max[0]) / 2)
    .filter((m) => m > outer[0]! + 0.1 && m < outer[1]! - 0.1);
  const posts = distinctStops([...outer, ...between]);
  const heights = distinctStops([0, enclosure.clearHeight, enclosure.frameTop, enclosure.top]);
  const [left, floor] = view.to([outer[0]!, 0]);
  const x = (stop: number) => view.to([stop, 0])[0];
  const y = (stop: number) => view.to([0, stop])[1];
  return [
    ...(posts.length > 2
      ? dimensionChain({ stops: posts, along: x, across: floor + 11, from: floor + 1, upright: false })
      : []),
    ...dimensionChain({
      stops: outer,
      along: x,
      across: floor + 20,
      from: floor + (posts.length > 2 ? 13 : 1),
      upright: false,
    }),
    ...dimensionChain({ stops: heights, along: y, across: left - 11, from: left - 1, upright: true }),
    ...dimensionChain({ stops: [0, enclosure.top], along: y, across: left - 20, from: left - 13, upright: true }),
  ];
}

function viewMarks(design: Design, enclosure: DesignEnclosure, view: Placed): Mark[] {
  const faces = nearFaces(design, enclosure, view.name);
  const [left, floor] = view.to([-view.half, 0]);
  const [right, top] = view.to([view.half, enclosure.top]);
  const tables = seenTables(design, enclosure, view);
  // Tables in double-dot lines: there already, by others.
  const drawn: Mark[] = [
    ...tables.map((table) => ring(table.outline, byOthers)),
    ...faces.map((face) => ring(face.outline.map(view.to), penOf(face.part), fillOf(face.part), face.part.mark)),
    line([left - 6, floor], [right + 6, floor], { ...wide, width: 0.7 }),
    line([left - 6, floor + 0.8], [right + 6, floor + 0.8], { width: 0.18, colour: hairline }),
    text([right + 7.5, floor + 0.8], '0.000', 2.5, { colour: secondInk }),
    ...dimensions(faces, enclosure, view),
    text([(left + right) / 2, top - 9.5], viewLetter[view.name], 5, { anchor: 'middle', medium: true, colour: ink }),
    text([(left + right) / 2, top - 4.5], viewTitle[view.name], 2.5, { anchor: 'middle', colour: secondInk }),
  ];
  const space = new LabelSpace();
  space.keepClear(drawn);
  const marked = markLabels(markedFaces(faces, view), space);
  return [...drawn, ...marked, ...tables.flatMap((table) => space.place(tableName(table)))];
}

/** Paper kept beside and between the views for dimensions and levels [mm]. */
const margin = { outer: 30, between: 46, top: 24, bottom: 30 } as const;

const freeSpace = (paper: PaperName) => {
  const space = drawingSpace(paper);
  return { width: space.width - 2 * margin.outer - margin.between, height: space.height - margin.top - margin.bottom };
};

/** A3 while it holds both views at 1:20 or larger, else A2 when that gives a larger scale. */
function paperAndScale(enclosure: DesignEnclosure): { readonly paper: PaperName; readonly scale: number } {
  const on = (paper: PaperName) => {
    const free = freeSpace(paper);
    return fittingScale((enclosure.length + enclosure.width) * 1000, enclosure.top * 1000, free.width, free.height);
  };
  const [a3, a2] = [on('A3'), on('A2')];
  return a3 <= 20 || a2 >= a3 ? { paper: 'A3', scale: a3 } : { paper: 'A2', scale: a2 };
}

function placeViews(enclosure: DesignEnclosure, paper: PaperName, scale: number): readonly Placed[] {
  const space = drawingSpace(paper);
  const mm = (metres: number) => (metres * 1000) / scale;
  const [front, side] = [enclosure.length, enclosure.width];
  const start = space.left + (space.width - mm(front + side) - margin.between) / 2 + 6;
  const floor = space.bottom - margin.bottom - (freeSpace(paper).height - mm(enclosure.top)) / 2;
  const placed = (name: ElevationName, width: number, from: number): Placed => ({
    name,
    half: width / 2,
    to: (p) => [from + mm(width) / 2 + mm(p[0]), floor - mm(p[1])],
  });
  return [placed('front', front, start), placed('side', side, start + mm(front) + margin.between)];
}

/** Front and side of an enclosure with heights, widths and a piece mark on every member that the view shows. */
export function elevationDrawing(
  design: Design,
  enclosure: DesignEnclosure,
  facts: Omit<SheetFacts, 'scale' | 'title' | 'documentType'>,
): Sheet {
  const { paper, scale } = paperAndScale(enclosure);
  const views = placeViews(enclosure, paper, scale);
  const space = drawingSpace(paper);
  const size = papers[paper];
  const strip = size.height - frameMargin.other - titleBlock.height;
  const full: SheetFacts = {
    ...facts,
    scale,
    title: `${enclosure.name}: elevations`,
    documentType: 'Frame general arrangement',
  };
  const notes = [
    ...generalNotes(design),
    `Profile ${enclosure.profile}; about ${enclosure.mass.toFixed(1)} kg with everything on it. Members by their envelope; lengths in the cut list.`,
    ...(shortens(design.parts.filter((part) => part.of === enclosure.id)) ? [shortMarkNote] : []),
  ];
  const layers: Layer[] = [
    ...views.map((view) => ({ id: view.name, title: viewTitle[view.name], marks: viewMarks(design, enclosure, view) })),
    {
      id: 'aids',
      title: 'Scale, status',
      marks: [
        ...scaleBar([space.right - 4, space.bottom - 8], scale),
        ...statusStamp([space.right - 4, space.top + 4]),
      ],
    },
    {
      id: 'strip',
      title: 'Notes',
      marks: [...stripMarks(paper), ...notesMarks(notes, frameMargin.left + 4, strip, 200)],
    },
    {
      id: 'title-block',
      title: 'Frame and title block',
      marks: [...titleBlockMarks(full, paper), ...frameMarks(paper)],
    },
  ];
  return {
    id: `elevation-${enclosure.id}`,
    title: `${design.project.name}: ${enclosure.name}, elevations`,
    description: `Front and side of ${enclosure.name} at 1:${scale}. Not approved.`,
    paper,
    width: size.width,
    height: size.height,
    scale,
    layers,
  };
}
