/** Answers kept of one function before the oldest are let go, where it says no other number. */
const usual = 400;

const kept = new Set<() => void>();

/** Numbers that JSON has no letters for are spelled, so that no two inputs share a key. */
const spelled = (_: string, value: unknown): unknown =>
  typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0))
    ? `number ${Object.is(value, -0) ? '-0' : value}`
    : value;

/**
 * The same pure function, that remembers its answers by the content of its inputs: an edit that leaves the inputs of a
 * computation alone does not compute it again. Only time is saved; the answer is the one that the function gives.
 *
 * Inputs are plain data (no maps or sets), or `contentOf` tells what of them the answer depends on. Answers are shared and must
 * not be changed. When the memory is full, what was not asked for since it was half full is let go.
 * @param most answers kept: more than one design asks for, and few where they are large [-]
 */
export function remembered<A extends readonly unknown[], R>(
  compute: (...inputs: A) => R,
  contentOf: (...inputs: A) => unknown = (...inputs) => inputs,
  most = usual,
): (...inputs: A) => R {
  let recent = new Map<string, R>();
  let before = new Map<string, R>();
  const keep = (key: string, answer: R): R => {
    if (recent.size >= most / 2) {
      before = recent;
      recent = new Map();
    }
    recent.set(key, answer);
    return answer;
  };
  kept.add(() => {
    recent.clear();
    before.clear();
  });
  return (...inputs) => {
    const key = JSON.stringify(contentOf(...inputs), spelled);
    const known = recent.get(key);
    if (known !== undefined) return known;
    const older = before.get(key);
    return keep(key, older === undefined ? compute(...inputs) : older);
  };
}

/** Lets all remembered answers go. @internal for tests that compare with answers computed anew */
export function forgetRemembered(): void {
  for (const clear of kept) clear();
}
