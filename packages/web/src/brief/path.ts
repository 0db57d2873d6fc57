/** Where a value stands in the brief: `['tables', 0, 'at', 1]`. */
export type Path = readonly (string | number)[];

export const pathKey = (path: Path): string => path.join('/');

export const samePath = (a: Path, b: Path): boolean => pathKey(a) === pathKey(b);

/** The value at a path of parsed data; undefined where nothing stands. */
export function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}

export const listAt = (data: unknown, path: Path): readonly unknown[] => {
  const value = valueAt(data, path);
  return Array.isArray(value) ? value : [];
};

/** What a field shows: text as written, nothing for nothing. */
export const shownText = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? String(value) : '';
