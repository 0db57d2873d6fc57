import { bounds, type Design, type DesignEnclosure, type Part, type Vec2 } from '@cloche/engine';
import { dimensionChain, distinctStops } from '../dimension.js';
import { byOthers, hairline, ink, narrow, secondInk, symbol, wash, wide } from '../inks.js';
import { type LabelPlace, LabelSpace } from '../labels.js';
import { clearedText, line, ring, text } from '../marks.js';
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

/** Each piece of the view with its mark: on the piece, at the first free place along it. Ends of bars show no mark here. */
function markLabels(faces: readonly Face[], view: Placed): Mark[] {
  const space = new LabelSpace();
  const seen = new Set<string>();
  return [...faces].reverse().flatMap((face) => {
    const mark = shortMark(face.part);
    const { min, max } = bounds(face.outline.map(view.to));
    const [width, height] = [max[0] - min[0], max[1] - min[1]];
    const key = `${mark} ${[min[0], min[1], width, height].map((c) => Math.round(c)).join(' ')}`;
    if (!mark || seen.has(key) || (width < 4.5 && height < 4.5)) return [];
    seen.add(key);
    const upright = height > 2 * width;
    const on = (share: number): LabelPlace =>
      upright
        ? { at: [(min[0] + max[0]) / 2 + 1.25, min[1] + height * share], anchor: 'middle', turn: Math.PI / 2 }
        : { at: [min[0] + width * share, (min[1] + max[1]) / 2 + 1.25], anchor: 'middle' };
    return space.place({ words: mark, height: 2.5, places: [0.5, 0.35, 0.65, 0.2, 0.8].map(on) });
  });
}

/** Tables in double-dot lines: there already, by others. */
function tableMarks(design: Design, enclosure: DesignEnclosure, view: Placed): Mark[] {
  return design.tables
    .filter((table) => enclosure.tables.includes(table.id))
    .flatMap((table) => {
      const across = table.outline.map((p) => inElevation(enclosure, view.name, [p[0], p[1], 0])[0]);
      const [left, right] = [Math.min(...across), Math.max(...across)];
      const outline: Vec2[] = [
        [left, 0],
        [right, 0],
        [right, table.height],
        [left, table.height],
      ];
      const [x, y] = view.to([(left + right) / 2, table.height * 0.3]);
      return [
        ring(outline.map(view.to), byOthers),
        ...clearedText([x, y], table.name, 2.5, { anchor: 'middle', colour: secondInk }),
      ];
    });
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
  return [
    ...tableMarks(design, enclosure, view),
    ...faces.map((face) => ring(face.outline.map(view.to), penOf(face.part), fillOf(face.part), face.part.mark)),
    line([left - 6, floor], [right + 6, floor], { ...wide, width: 0.7 }),
    line([left - 6, floor + 0.8], [right + 6, floor + 0.8], { width: 0.18, colour: hairline }),
    text([right + 7.5, floor + 0.8], '0.000', 2.5, { colour: secondInk }),
    ...markLabels(faces, view),
    ...dimensions(faces, enclosure, view),
    text([(left + right) / 2, top - 9.5], viewLetter[view.name], 5, { anchor: 'middle', medium: true, colour: ink }),
    text([(left + right) / 2, top - 4.5], viewTitle[view.name], 2.5, { anchor: 'middle', colour: secondInk }),
  ];
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
        ...scaleBar([space.right - 96, space.bottom - 8], scale),
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
