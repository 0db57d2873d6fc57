import { create } from 'zustand';

/** What is done, by line, on this device: of one revision, since another may have other pieces. */
export interface Ticks {
  readonly of: string | null;
  readonly done: ReadonlySet<string>;
}

export const useTicks = create<Ticks>(() => ({ of: null, done: new Set<string>() }));

export const ticksPlace = (revision: string): string => `cloche.fitted.${revision}`;

export function openTicks(revision: string): void {
  if (useTicks.getState().of === revision) return;
  useTicks.setState({ of: revision, done: new Set(read(localStorage.getItem(ticksPlace(revision)))) });
}

/** Kept lines; nothing where what was kept cannot be read. */
function read(kept: string | null): readonly string[] {
  try {
    const value: unknown = JSON.parse(kept ?? '[]');
    return Array.isArray(value) ? value.filter((each) => typeof each === 'string') : [];
  } catch {
    return [];
  }
}

export function tick(key: string, done: boolean): void {
  const { of, done: before } = useTicks.getState();
  const after = new Set(before);
  if (done) after.add(key);
  else after.delete(key);
  useTicks.setState({ done: after });
  if (of !== null) localStorage.setItem(ticksPlace(of), JSON.stringify([...after]));
}
