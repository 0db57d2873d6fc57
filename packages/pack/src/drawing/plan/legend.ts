import type { Catalogue, Design } from '@cloche/engine';
import { fine, hidden, ink, narrow, secondInk, symbol, wide } from '../inks.js';
import { arrowHead, box, circle, fittedText, line, polyline, text } from '../marks.js';
import type { Mark, PaperPoint } from '../types.js';
import { curtainWave } from './curtain-wave.js';
import { deviceSymbol, symbolMarks } from './devices.js';
import { beamPen, tubePen, usesStops, usesTubes } from './lasers.js';
import { hatchBand } from './room.js';

interface Entry {
  readonly words: string;
  readonly draw: (x: number, y: number) => Mark[];
}

const sample = 10;

/** The legend lists only what the sheet uses. */
function entries(design: Design, catalogue: Catalogue): Entry[] {
  const { room } = design;
  const list: Entry[] = [
    {
      words: 'surveyed wall',
      draw: (x, y) => {
        const corners: PaperPoint[] = [
          [x, y - 3],
          [x + sample, y - 3],
          [x + sample, y],
          [x, y],
        ];
        return [...hatchBand(corners, [], 1.6), line([x, y], [x + sample, y], { ...wide, width: 1 })];
      },
    },
  ];
  const add = (used: boolean, words: string, draw: Entry['draw']) => {
    if (used) list.push({ words, draw });
  };
  add(design.tables.length > 0, 'table, origin', (x, y) => [
    box(x, y - 3.5, sample, 3.5, wide, '#FFFFFF'),
    { mark: 'path', d: `M${x} ${y} L${x + 3} ${y} L${x} ${y - 3} Z`, fill: ink },
  ]);
  add(design.enclosures.length > 0, 'post, roof bar', (x, y) => [
    box(x, y - 3, 1.8, 1.8, symbol, ink),
    box(x + 1.8, y - 2.7, sample - 1.8, 1.2, narrow),
  ]);
  add(
    design.enclosures.some((e) => e.unitAreas.length > 0),
    'fan filter unit',
    (x, y) => [
      box(x, y - 4, sample, 4, hidden),
      line([x, y - 4], [x + sample, y], hidden),
      line([x, y], [x + sample, y - 4], hidden),
    ],
  );
  add(design.runs.length > 0, 'curtain, supports', (x, y) => {
    const track: PaperPoint[] = [
      [x, y - 1.6],
      [x + sample, y - 1.6],
    ];
    return [
      polyline(track, fine),
      polyline(curtainWave(track, 1.12, 3), symbol),
      line([x + 3, y - 3.4], [x + 3, y + 0.2], narrow),
    ];
  });
  add(design.lasers.length > 0, 'laser beam', (x, y) => [
    line([x, y - 1.5], [x + sample, y - 1.5], beamPen),
    arrowHead([x + sample, y - 1.5], [1, 0], 3, beamPen.colour),
  ]);
  add(usesTubes(design), 'beam in a tube', (x, y) => [line([x, y - 1.5], [x + sample, y - 1.5], tubePen)]);
  add(usesStops(design), 'beam stop', (x, y) => [line([x + 5, y - 3.5], [x + 5, y + 0.5], { width: 1, colour: ink })]);
  add(room.sprinklers.length > 0, 'sprinkler', (x, y) => [
    circle([x + 5, y - 1.4], 1.5, narrow),
    line([x + 5, y - 2.4], [x + 7, y - 0.4], narrow),
    line([x + 5, y - 0.4], [x + 7, y - 2.4], narrow),
  ]);
  add(room.detectors.length > 0, 'fire detector', (x, y) => [
    circle([x + 5, y - 1.4], 2.2, narrow),
    text([x + 5, y - 0.15], 'S', 2.5, { anchor: 'middle' }),
  ]);
  add(
    room.airTerminals.some((t) => t.kind === 'supply'),
    'supply air',
    (x, y) => [
      box(x + 4, y - 3.6, 4, 4, hidden),
      line([x + 4, y - 3.6], [x + 8, y + 0.4], fine),
      line([x + 4, y + 0.4], [x + 8, y - 3.6], fine),
    ],
  );
  add(
    room.airTerminals.some((t) => t.kind === 'return'),
    'return air',
    (x, y) => [box(x + 4, y - 3.6, 4, 4, hidden), line([x + 4, y + 0.4], [x + 8, y - 3.6], fine)],
  );
  const symbols = new Map(
    design.devices.map((d) => deviceSymbol(d, catalogue)).map((s) => [`${s.letter}${s.meaning}`, s]),
  );
  for (const device of symbols.values())
    list.push({ words: device.meaning, draw: (x, y) => symbolMarks([x + 5, y - 1.3], device) });
  return list;
}

const columns = 3;
const largestRow = 5.6;

/** Three columns; the lines move closer together when there are many, down to the height of a symbol. */
export function legendMarks(
  design: Design,
  catalogue: Catalogue,
  x: number,
  y: number,
  width: number,
  height: number,
): Mark[] {
  const list = entries(design, catalogue);
  const perColumn = Math.ceil(list.length / columns);
  const row = Math.min(largestRow, (height - 8) / perColumn);
  return [
    text([x, y + 5], 'Legend', 2.5, { medium: true }),
    ...list.flatMap((entry, i) => {
      const column = Math.floor(i / perColumn);
      const at: PaperPoint = [x + (column * width) / columns, y + 6.4 + ((i % perColumn) + 1) * row - 0.6];
      const room = width / columns - sample - 4;
      const words = fittedText([at[0] + sample + 2.5, at[1] - 0.2], entry.words, 2.5, room, { colour: secondInk });
      return [...entry.draw(at[0], at[1]), words];
    }),
  ];
}
