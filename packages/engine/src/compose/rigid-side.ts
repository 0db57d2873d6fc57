import type { Profile, Sheet, Strip } from '../catalogue/schema.js';
import type { Placed } from '../design/types.js';
import { type Outcome, ok, valueOf } from '../floor/problem.js';
import { groovePanel } from '../frame/index.js';
import { type Axes, toSpace } from './axes.js';
import type { PartDraft } from './draft.js';
import { type Bay, mullions, sideLines } from './frame-members.js';

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
  readonly panelWidth: number;
}

/** Rigid panels of one side: one between each two uprights, in the grooves of rail, beam and posts, held by an insert all round. */
export function rigidSide(input: RigidSideInput): PartDraft[] {
  const { of, axes, profile, sheet, insert } = input;
  const [w, h] = profile.size;
  const lines = sideLines(axes);
  const bottom = input.hemGap + h;
  const height = valueOf(panelCutSize(input.clearHeight - bottom, profile.slot.depth));
  return input.bays.flatMap((bay) => {
    const side = lines.find((l) => l.name === bay.side)!;
    const mid = side.alongU ? axes.width / 2 + w / 2 : axes.length / 2 + w / 2;
    const halfMullion = (side.alongU ? h : w) / 2;
    const uprights = mullions(bay.from, bay.to, input.panelWidth);
    const edges = [bay.from, ...uprights.flatMap((s) => [s - halfMullion, s + halfMullion]), bay.to];
    const parts: PartDraft[] = [];
    for (let i = 0; i + 1 < edges.length; i += 2) {
      const width = valueOf(panelCutSize(edges[i + 1]! - edges[i]!, profile.slot.depth));
      const from = (edges[i]! + edges[i + 1]!) / 2 - width / 2;
      const low = (bottom + input.clearHeight) / 2 - height / 2;
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
