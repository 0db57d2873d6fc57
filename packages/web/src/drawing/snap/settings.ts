import { create } from 'zustand';
import type { PlanView } from '../../plan/view.js';
import { gridOf, type Units } from '../length-text.js';
import type { SnapKind, SnapOptions } from './types.js';

/** What is switched on and off together. */
export const snapGroups = {
  spots: ['end', 'middle'],
  edges: ['wall', 'offset', 'extension'],
  lines: ['angle', 'axis'],
  steps: ['grid'],
} as const satisfies Readonly<Record<string, readonly SnapKind[]>>;
export type SnapGroup = keyof typeof snapGroups;
export const snapGroupNames = Object.keys(snapGroups) as readonly SnapGroup[];
export const allSnapKinds: readonly SnapKind[] = Object.values(snapGroups).flat();

const place = 'cloche.snap-off';
const kept = (): readonly SnapGroup[] => {
  const words = (localStorage.getItem(place) ?? '').split(' ');
  return snapGroupNames.filter((name) => words.includes(name));
};

/** Groups that this browser has switched off. */
export const useSnapSettings = create<{ readonly off: readonly SnapGroup[] }>(() => ({ off: kept() }));

export function switchSnap(group: SnapGroup): void {
  const { off } = useSnapSettings.getState();
  const next = off.includes(group) ? off.filter((each) => each !== group) : [...off, group];
  localStorage.setItem(place, next.join(' '));
  useSnapSettings.setState({ off: next });
}

/** Pixels within which the pointer is drawn aside. */
const reachOnScreen = 9;

/** How snapping works at this scale, with the switches as they stand. */
export function snapOptions(
  view: PlanView,
  units: Units,
  more: { readonly free?: boolean; readonly from?: SnapOptions['from'] } = {},
): SnapOptions {
  const { off } = useSnapSettings.getState();
  const kinds = new Set(snapGroupNames.flatMap((name) => (off.includes(name) ? [] : [...snapGroups[name]])));
  const { from, free = false } = more;
  return { reach: reachOnScreen / view.scale, grid: gridOf(units), kinds, free, ...(from ? { from } : {}) };
}
