import DxfParser from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { type DxfContent, type LineDrawing, lineDrawing, mostPoints } from './dxf-lines.js';

/** A file of entities, as pairs of code and value. */
const file = (entities: readonly (string | number)[], unit = 6): string =>
  [
    0,
    'SECTION',
    2,
    'HEADER',
    9,
    '$INSUNITS',
    70,
    unit,
    0,
    'ENDSEC',
    0,
    'SECTION',
    2,
    'ENTITIES',
    ...entities,
    0,
    'ENDSEC',
    0,
    'EOF',
    '',
  ].join('\n');
const read = (entities: readonly (string | number)[], unit?: number) =>
  lineDrawing(new DxfParser().parseSync(file(entities, unit)) as DxfContent) as LineDrawing;

const square = [0, 'LWPOLYLINE', 8, 0, 90, 4, 70, 1, 10, 0, 20, 0, 10, 2, 20, 0, 10, 2, 20, 2, 10, 0, 20, 2];

describe('the lines of a drawing', () => {
  test('closed lines are told apart, with the unit of the file', () => {
    const drawing = read([...square, 0, 'LINE', 8, 0, 10, -1, 20, 0, 11, 3, 21, 4], 4);
    expect(drawing).toMatchObject({ min: [-1, 0], max: [3, 4], metres: 0.001 });
    expect(drawing.closed).toEqual([
      [
        [0, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ],
    ]);
    expect(drawing.lines).toHaveLength(2);
  });
  test('a line that ends where it began is closed, and corners within a straight side tell nothing', () => {
    const drawing = read([
      0,
      'LWPOLYLINE',
      8,
      0,
      90,
      6,
      70,
      0,
      10,
      0,
      20,
      0,
      10,
      1,
      20,
      0,
      10,
      2,
      20,
      0,
      10,
      2,
      20,
      2,
      10,
      0,
      20,
      2,
      10,
      0,
      20,
      0,
    ]);
    expect(drawing.closed).toEqual([
      [
        [0, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ],
    ]);
  });
  test('a bulge of one is a half circle: from (0, 0) to (2, 0) it reaches 1 below, going counter-clockwise', () => {
    const drawing = read([0, 'LWPOLYLINE', 8, 0, 90, 2, 70, 0, 10, 0, 20, 0, 42, 1, 10, 2, 20, 0]);
    expect(drawing.min[1]).toBeCloseTo(-1, 9);
    expect(drawing.max[1]).toBeCloseTo(0, 9);
    for (const [x, y] of drawing.lines[0]!) expect(Math.hypot(x - 1, y)).toBeCloseTo(1, 9);
  });
  test('a circle and an arc keep their radius', () => {
    const drawing = read([0, 'CIRCLE', 8, 0, 10, 5, 20, 5, 40, 2, 0, 'ARC', 8, 0, 10, 0, 20, 0, 40, 1, 50, 0, 51, 90]);
    for (const [x, y] of drawing.lines[0]!) expect(Math.hypot(x - 5, y - 5)).toBeCloseTo(2, 9);
    expect(drawing.lines[1]!.at(-1)![1]).toBeCloseTo(1, 9);
  });
  test('a block is put in its place, turned and scaled', () => {
    const blocks = {
      B: {
        position: { x: 1, y: 0 },
        entities: [
          {
            type: 'LINE',
            vertices: [
              { x: 1, y: 0 },
              { x: 2, y: 0 },
            ],
          },
        ],
      },
    };
    const insert = { type: 'INSERT', name: 'B', position: { x: 10, y: 10 }, rotation: 90, xScale: 3, yScale: 3 };
    const drawing = lineDrawing({ entities: [insert], blocks }) as LineDrawing;
    expect(drawing.lines[0]![0]).toEqual([10, 10]);
    expect(drawing.lines[0]![1]![1]).toBeCloseTo(13, 9);
  });
  test('a block that holds itself comes to an end', () => {
    const self = { type: 'INSERT', name: 'B', position: { x: 0, y: 0 } };
    const blocks = {
      B: {
        entities: [
          self,
          {
            type: 'LINE',
            vertices: [
              { x: 0, y: 0 },
              { x: 1, y: 0 },
            ],
          },
        ],
      },
    };
    expect((lineDrawing({ entities: [self], blocks }) as LineDrawing).lines.length).toBeLessThan(20);
  });
  test('what is not drawn is counted; a file without lines, or with too many, is told', () => {
    expect(read([...square, 0, 'TEXT', 8, 0, 10, 0, 20, 0, 40, 1, 1, 'Room']).leftOut).toEqual({ TEXT: 1 });
    expect(lineDrawing({ entities: [] })).toBe('empty');
    const long = {
      type: 'LWPOLYLINE',
      vertices: Array.from({ length: mostPoints + 1 }, (_, i) => ({ x: i, y: i % 2 })),
    };
    expect(lineDrawing({ entities: [long] })).toBe('too-large');
  });
});
