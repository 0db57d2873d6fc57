import type { Light, Sheet } from '../catalogue/schema.js';
import { type Axes, toSpace } from './axes.js';
import type { UnitChoice } from './choose-units.js';
import type { PartDraft } from './draft.js';
import type { Rect, RoofLayout } from './roof.js';

/** Fan filter units on the roof. */
export function unitParts(of: string, axes: Axes, choice: UnitChoice, roof: RoofLayout, frameTop: number): PartDraft[] {
  const { unit } = choice;
  if (!unit) return [];
  return roof.units.map(
    (r): PartDraft => ({
      item: unit.id,
      group: 'fan filter units',
      role: 'fan filter unit',
      of,
      shape: {
        shape: 'box',
        centre: toSpace(axes, (r.u0 + r.u1) / 2, (r.v0 + r.v1) / 2, frameTop + unit.size[2] / 2),
        length: r.u1 - r.u0,
        width: r.v1 - r.v0,
        height: unit.size[2],
        turn: axes.turn,
      },
      count: 1,
      mass: unit.mass,
      placed: {
        rule: 'compose.enclosure.fan-filter-unit',
        because: 'Fan filter units lie over the middle of the work, on cross beams, as many as flow and coverage need.',
      },
    }),
  );
}

/** Panels that close the rest of the roof, split along v where a sheet is too short; the long side of the sheet lies along v where it can. */
export function roofPanels(of: string, axes: Axes, sheet: Sheet, roof: RoofLayout, frameTop: number): PartDraft[] {
  const [long, short] = [Math.max(...sheet.sheetSize), Math.min(...sheet.sheetSize)];
  const split = (r: Rect): Rect[] => {
    const most = r.u1 - r.u0 > short + 1e-9 ? short : long;
    const pieces = Math.ceil((r.v1 - r.v0) / most - 1e-9);
    const step = (r.v1 - r.v0) / pieces;
    return Array.from({ length: pieces }, (_, i) => ({ ...r, v0: r.v0 + i * step, v1: r.v0 + (i + 1) * step }));
  };
  return roof.panels.flatMap(split).map((r): PartDraft => {
    const a = r.u1 - r.u0;
    const b = r.v1 - r.v0;
    return {
      item: sheet.id,
      group: 'panels',
      role: 'roof panel',
      of,
      shape: {
        shape: 'plate',
        corners: [
          toSpace(axes, r.u0, r.v0, frameTop),
          toSpace(axes, r.u1, r.v0, frameTop),
          toSpace(axes, r.u1, r.v1, frameTop),
          toSpace(axes, r.u0, r.v1, frameTop),
        ],
        thickness: sheet.thickness,
      },
      count: 1,
      length: Math.max(a, b),
      width: Math.min(a, b),
      thickness: sheet.thickness,
      mass: a * b * sheet.massPerArea,
      placed: { rule: 'compose.enclosure.roof-panel', because: 'Panels close the roof where no fan filter unit lies.' },
    };
  });
}

/** Rows of lights keep this from the long sides, and their ends this from the end sides, so that tracks pass [m] (common practice). */
const lightFromSide = 0.12;
const lightFromEnd = 0.06;

/** Rows of lights that a roof has room for, and how many of one length fit into a row. */
function lightRows(
  axes: Axes,
  light: Light,
): { readonly rows: number; readonly perRow: number; readonly along: number } {
  const along = axes.length - 2 * lightFromEnd;
  const rows = axes.width >= 4 * lightFromSide ? 2 : 1;
  return { rows, perRow: Math.max(0, Math.floor(along / light.length + 1e-9)), along };
}

/** How many lights fit under the roof in two rows, or one where it is narrow. */
export const lightsThatFit = (axes: Axes, light: Light): number => {
  const { rows, perRow } = lightRows(axes, light);
  return rows * perRow;
};

/** Light strips under the roof, in two rows along the long sides; no more than fit are asked for here. */
export function lightParts(
  of: string,
  axes: Axes,
  light: Light | null,
  lightCount: number,
  clearHeight: number,
): PartDraft[] {
  if (!light || lightCount === 0) return [];
  const fitting = lightRows(axes, light);
  const rows = lightCount > 1 ? fitting.rows : 1;
  const perRow = Math.ceil(lightCount / rows);
  const v = axes.width / 2 - lightFromSide;
  return Array.from({ length: lightCount }, (_, i): PartDraft => {
    const row = i % rows;
    const n = Math.floor(i / rows);
    const u = -fitting.along / 2 + (fitting.along * (n + 0.5)) / perRow;
    return {
      item: light.id,
      group: 'lights',
      role: 'light',
      of,
      shape: {
        shape: 'box',
        centre: toSpace(axes, u, rows === 1 ? 0 : row === 0 ? -v : v, clearHeight - 0.02),
        length: light.length,
        width: 0.04,
        height: 0.03,
        turn: axes.turn,
      },
      count: 1,
      mass: light.mass,
      placed: {
        rule: 'compose.enclosure.light',
        because: 'Light strips run under the roof along both long sides, out of the way of the clean air.',
      },
    };
  });
}
