import type { Profile, Sheet, Strip } from '../catalogue/schema.js';
import type { Placed } from '../design/types.js';
import { type Outcome, ok, valueOf } from '../floor/problem.js';
import { groovePanel } from '../frame/index.js';
import { type Axes, toSpace } from './axes.js';
import type { PartDraft } from './draft.js';
import { type Bay, fieldsBetween, mullions, type PanelField, sideLines } from './frame-members.js';

const placed = (rule: string, because: string): Placed => ({ rule: `compose.enclosure.${rule}`, because });

/** Play of a panel in its groove at each edge [m] (common practice; handbook of structure, section 15). */
export const panelEndClearance = 0.0025;

/** Cut size of a panel in the grooves of a profile [m]; growth is judged by the frame checks, so none is added here. */
export const panelCutSize = (clearOpening: number, grooveDepth: number): Outcome<number> => {
  const cut = groovePanel({
    clearOpening,
    grooveDepth,
    endClearance: panelEndClearance,
    temperatureChange: 0,
    panelExpansion: 0,
    frameExpansion: 0,
  });
  return cut.ok ? ok(cut.value.cutSize) : cut;
};

export interface RigidSideInput {
  readonly of: string;
  readonly axes: Axes;
  readonly profile: Profile;
  readonly sheet: Sheet;
  readonly insert: Strip | undefined;
  readonly bays: readonly Bay[];
  readonly hemGap: number;
  readonly clearHeight: number;
  readonly field: PanelField;
}

/** Rigid panels of one side: one between each two uprights, in the grooves of rail, beam and posts, held by an insert all round. */
export function rigidSide(input: RigidSideInput): PartDraft[] {
  const { of, axes, profile, sheet, insert } = input;
  const [w, h] = profile.size;
  const lines = sideLines(axes);
  const bottom = input.hemGap + h;
  const rows = fieldsBetween(bottom, input.clearHeight, mullions(bottom, input.clearHeight, input.field.height), h / 2);
  return input.bays.flatMap((bay) => {
    const side = lines.find((l) => l.name === bay.side)!;
    const mid = side.alongU ? axes.width / 2 + w / 2 : axes.length / 2 + w / 2;
    const columns = fieldsBetween(bay.from, bay.to, mullions(bay.from, bay.to, input.field.width), h / 2);
    const parts: PartDraft[] = [];
    for (const [left, right] of columns)
      for (const [under, over] of rows) {
        const width = valueOf(panelCutSize(right - left, profile.slot.depth));
        const height = valueOf(panelCutSize(over - under, profile.slot.depth));
        const from = (left + right) / 2 - width / 2;
        const low = (under + over) / 2 - height / 2;
        const at = (s: number, z: number) =>
          side.alongU ? toSpace(axes, s, side.sign * mid, z) : toSpace(axes, side.sign * mid, s, z);
        const corners = [at(from, low), at(from + width, low), at(from + width, low + height), at(from, low + height)];
        parts.push({
          item: sheet.id,
          group: 'panels',
          role: 'side panel',
          of,
          shape: { shape: 'plate', corners, thickness: sheet.thickness },
          count: 1,
          length: height,
          width,
          thickness: sheet.thickness,
          mass: width * height * sheet.massPerArea,
          placed: placed(
            'side-panel',
            'A rigid panel closes each bay of a rigid side; it stands in the grooves with play all round.',
          ),
        });
        if (!insert) continue;
        const round = 2 * (width + height);
        parts.push({
          item: insert.id,
          group: 'strips',
          role: 'panel insert',
          of,
          shape: { shape: 'loose', at: corners[0]! },
          count: 1,
          length: round,
          mass: round * insert.massPerLength,
          placed: placed(
            'panel-insert',
            'A panel insert holds each rigid panel in its groove all round, so that it neither rattles nor leaks.',
          ),
        });
      }
    return parts;
  });
}
