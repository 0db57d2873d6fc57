import { create } from 'zustand';
import { memberOf } from './members.js';

export const layerNames = [
  'building',
  'tables',
  'beams',
  'made',
  'parts',
  'dimensions',
  'labels',
  'findings',
  'background',
] as const;
export type LayerName = (typeof layerNames)[number];

/** Layers with things that can be taken in hand, and the background that can be laid anew. */
export const lockable: readonly LayerName[] = ['building', 'tables', 'beams', 'made', 'background'];

interface Layers {
  readonly hidden: readonly LayerName[];
  readonly locked: readonly LayerName[];
}

const place = 'cloche.layers';

function kept(): Layers {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(place) ?? '{}');
    const names = (key: string): readonly LayerName[] => {
      const list: unknown = typeof read === 'object' && read !== null ? (read as Record<string, unknown>)[key] : [];
      return layerNames.filter((name) => Array.isArray(list) && list.includes(name));
    };
    return { hidden: names('hidden'), locked: names('locked') };
  } catch {
    return { hidden: [], locked: [] };
  }
}

/** What this browser does not show or does not let be touched; what is printed does not know of it. */
export const useLayers = create<Layers>(kept);

const toggled = (list: readonly LayerName[], name: LayerName): readonly LayerName[] =>
  list.includes(name) ? list.filter((each) => each !== name) : [...list, name];

function keep(next: Partial<Layers>): void {
  useLayers.setState(next);
  const { hidden, locked } = useLayers.getState();
  localStorage.setItem(place, JSON.stringify({ hidden, locked }));
}

export const toggleShown = (name: LayerName): void => keep({ hidden: toggled(useLayers.getState().hidden, name) });
export const toggleLocked = (name: LayerName): void => keep({ locked: toggled(useLayers.getState().locked, name) });
export const showAllLayers = (): void => keep({ hidden: [], locked: [] });

const layerOfList: Readonly<Record<string, LayerName>> = {
  tables: 'tables',
  equipment: 'tables',
  lasers: 'beams',
  enclosures: 'made',
  runs: 'made',
};

/** The layer that a thing of the brief is drawn on. */
export const layerOf = (data: unknown, id: string): LayerName =>
  layerOfList[memberOf(data, id)?.list ?? ''] ?? 'building';

/** True for what must not be taken in hand on the sheet: its layer is locked, or not shown. */
export function isLocked(data: unknown, id: string): boolean {
  const { hidden, locked } = useLayers.getState();
  const layer = layerOf(data, id);
  return hidden.includes(layer) || locked.includes(layer);
}
