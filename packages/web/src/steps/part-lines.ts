import type { Part } from '../engine/contract.js';

/** Equal pieces of one list line. */
export interface PartLine {
  readonly key: string;
  readonly mark: string | null;
  readonly item: string;
  readonly count: number;
  readonly length: number | null;
  readonly mass: number;
  readonly because: string;
  readonly ids: readonly string[];
}

/** Parts by group, equal ones together: same item, same mark, same length. */
export function partLines(parts: readonly Part[]): ReadonlyMap<string, readonly PartLine[]> {
  const lines = new Map<string, Map<string, PartLine>>();
  for (const part of parts) {
    const group = lines.get(part.group) ?? new Map<string, PartLine>();
    const key = `${part.mark ?? ''} ${part.item} ${part.length?.toFixed(4) ?? ''}`;
    const line = group.get(key);
    group.set(key, {
      key,
      mark: part.mark ?? null,
      item: part.item,
      count: (line?.count ?? 0) + part.count,
      length: part.length ?? null,
      mass: (line?.mass ?? 0) + part.mass,
      because: part.placed.because,
      ids: [...(line?.ids ?? []), part.id],
    });
    lines.set(part.group, group);
  }
  return new Map([...lines].map(([group, byKey]) => [group, [...byKey.values()]]));
}
