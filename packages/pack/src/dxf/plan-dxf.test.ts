import parserModule from 'dxf-parser';
import { describe, expect, test } from 'vitest';
import { catalogue, design } from '../../test/fixture.js';
import { dxfLayers } from './layers.js';
import { planDxf } from './plan-dxf.js';

interface Parsed {
  readonly header: Readonly<Record<string, unknown>>;
  readonly tables: { readonly layer: { readonly layers: object } };
  readonly entities: readonly { readonly type: string; readonly layer: string }[];
}
/** The parser is a CommonJS class; its types describe it as a module with a default export. */
const DxfParser = parserModule as unknown as new () => { parseSync(text: string): Parsed | null };

const text = planDxf(design, catalogue);
const parsed = new DxfParser().parseSync(text)!;
const on = (layer: string) => parsed.entities.filter((e) => e.layer === layer);
const vertices = (layer: string) =>
  on(layer).flatMap((e) => (e as unknown as { vertices: { x: number; y: number }[] }).vertices);

describe('the plan as DXF, read by an independent parser', () => {
  test('says millimetres and its version', () => {
    expect(parsed.header.$INSUNITS).toBe(4);
    expect(parsed.header.$ACADVER).toBe('AC1021');
  });

  test('has its layers', () => {
    const names = Object.keys(parsed.tables.layer.layers);
    expect(names).toEqual(expect.arrayContaining(Object.values(dxfLayers).map((l) => l.name)));
  });

  test('draws the wall at full size: its extents are the room', () => {
    const points = vertices('A-WALL-EXST');
    expect([Math.min(...points.map((p) => p.x)), Math.max(...points.map((p) => p.x))]).toEqual([0, 7200]);
    expect([Math.min(...points.map((p) => p.y)), Math.max(...points.map((p) => p.y))]).toEqual([0, 5400]);
  });

  test('swings the door through a quarter circle about its hinge', () => {
    const arc = on('A-DOOR').find((e) => e.type === 'ARC') as unknown as {
      center: { x: number; y: number };
      radius: number;
      startAngle: number;
      endAngle: number;
    };
    expect(arc.center).toMatchObject({ x: 7200, y: 4500 });
    expect(arc.radius).toBe(1000);
    expect([arc.startAngle, arc.endAngle].map((a) => Math.round((a * 180) / Math.PI))).toEqual([180, 270]);
  });

  test('has every profile once and every unit', () => {
    expect(on('S-FRAM')).toHaveLength(design.parts.filter((p) => p.group === 'profiles').length);
    expect(on('M-FFU').filter((e) => e.type === 'LWPOLYLINE')).toHaveLength(2);
  });

  test('keeps dimensions as text on their own layer', () => {
    const words = on('G-DIMS').flatMap((e) => (e.type === 'TEXT' ? [(e as unknown as { text: string }).text] : []));
    expect(words).toEqual(expect.arrayContaining(['7200', '5400', '3600']));
  });

  test('is the same text every time', () => {
    expect(planDxf(design, catalogue)).toBe(text);
  });

  test('a line break in a name cannot start a tag of its own', () => {
    const evil = planDxf({ ...design, tables: design.tables.map((t) => ({ ...t, name: 'A\n0\nEOF' })) }, catalogue);
    expect(new DxfParser().parseSync(evil)!.entities.length).toBe(parsed.entities.length);
  });
});
