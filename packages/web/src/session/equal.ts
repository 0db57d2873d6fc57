/** Same plain data; the order of fields does not count, that of lists does. */
export function isEqual(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [keys, others] = [Object.keys(a), Object.keys(b)];
  return (
    keys.length === others.length &&
    keys.every((key) => Object.hasOwn(b, key) && isEqual(a[key as keyof typeof a], b[key as keyof typeof b]))
  );
}
