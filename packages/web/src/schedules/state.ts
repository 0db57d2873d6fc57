import { create } from 'zustand';
import { show } from '../state/store.js';
import type { ScheduleId } from './schedule.js';

/** A schedule of the brief, or a look at what is in force on the shelf. */
export type LeafId = ScheduleId | 'rules' | 'catalogue';

export interface Sorting {
  readonly column: number;
  readonly down: boolean;
}

interface Look {
  readonly leaf: LeafId;
  /** Widths that a person gave to columns [px], by schedule and column. */
  readonly widths: Readonly<Record<string, number>>;
  readonly sorting: Sorting | null;
}

export const useLook = create<Look>(() => ({ leaf: 'lasers', widths: {}, sorting: null }));

/** Shows one schedule, or site rules or catalogue, in the middle of the sheet. */
export function openLeaf(leaf: LeafId): void {
  useLook.setState({ leaf, sorting: null });
  show('schedules');
}

export const narrowest = 48;

export function setWidth(key: string, width: number): void {
  useLook.setState(({ widths }) => ({ widths: { ...widths, [key]: Math.max(narrowest, Math.round(width)) } }));
}

/** Once: upwards, twice: downwards, three times: in the order of the brief. */
export function sortBy(column: number): void {
  useLook.setState(({ sorting }) => {
    if (sorting?.column !== column) return { sorting: { column, down: false } };
    return { sorting: sorting.down ? null : { column, down: true } };
  });
}
export const unsort = (): void => useLook.setState({ sorting: null });
