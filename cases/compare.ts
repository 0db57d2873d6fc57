import { type Adapters, type CheckCase, Given, Unsupported } from './adapter.js';

export type CaseResult =
  | { readonly id: string; readonly topic: string; readonly outcome: 'agrees' }
  | {
      readonly id: string;
      readonly topic: string;
      readonly outcome: 'differs';
      readonly differences: readonly string[];
    }
  | { readonly id: string; readonly topic: string; readonly outcome: 'unsupported'; readonly reason: string };

/**
 * Half a unit in the last figure that a case prints, where it prints at least six: its author rounded there, so no tolerance
 * can be finer.
 */
function printedRounding(expected: number): number {
  const [mantissa, exponent] = expected.toExponential().split('e') as [string, string];
  const figures = mantissa.replace(/[-.]/g, '').length;
  return figures >= 6 ? 0.5 * 10 ** (Number(exponent) - figures + 1) : 0;
}

const show = (value: unknown): string => (value === undefined ? 'nothing' : JSON.stringify(value));

/** Differences between a result and what is expected, by the case's own tolerances; lists and tables entry by entry. */
function differences(path: string, got: unknown, expected: unknown, c: CheckCase, scale = 0): string[] {
  if (typeof expected === 'number' && typeof got === 'number') {
    const integer = Number.isInteger(expected) && (c.exact === true || c.tolerance_rel === undefined);
    const rel = integer ? 0 : (c.tolerance_rel ?? 0);
    const allowed = Math.max(
      rel * Math.abs(expected),
      c.tolerance_abs ?? 0,
      scale * 1e-3,
      rel === 0 ? 1e-9 * Math.abs(expected) : 0,
      printedRounding(expected),
    );
    return Math.abs(got - expected) <= allowed ? [] : [`${path}: got ${got}, expected ${expected}`];
  }
  if (Array.isArray(expected)) {
    if (!Array.isArray(got) || got.length !== expected.length)
      return [`${path}: got ${show(got)}, expected ${show(expected)}`];
    const numbers = expected.filter((v): v is number => typeof v === 'number');
    const largest =
      c.topic.startsWith('support') || numbers.length < expected.length ? 0 : Math.max(0, ...numbers.map(Math.abs));
    return expected.flatMap((e, i) => differences(`${path}[${i}]`, got[i], e, c, largest * (c.tolerance_rel ?? 0)));
  }
  if (expected !== null && typeof expected === 'object') {
    const record = expected as Record<string, unknown>;
    const gotRecord = (got ?? {}) as Record<string, unknown>;
    return Object.keys(record).flatMap((key) =>
      differences(path === '' ? key : `${path}.${key}`, gotRecord[key], record[key], c),
    );
  }
  return got === expected ? [] : [`${path}: got ${show(got)}, expected ${show(expected)}`];
}

/** Runs one case through the adapter of its topic. A throw that is not `Unsupported` is a bug and is passed on as a difference. */
export function runCase(c: CheckCase, adapters: Adapters): CaseResult {
  const base = { id: c.id, topic: c.topic };
  const adapter = adapters[c.topic];
  if (!adapter) return { ...base, outcome: 'unsupported', reason: 'topic not known' };
  const given = new Given(c.given);
  try {
    const got = adapter(given, new Set(Object.keys(c.expect)));
    const unread = given.unread();
    if (unread.length > 0) return { ...base, outcome: 'unsupported', reason: `field not known: ${unread.join(', ')}` };
    const missing = Object.keys(c.expect).filter((name) => !(name in got));
    if (missing.length > 0)
      return { ...base, outcome: 'unsupported', reason: `result not known: ${missing.join(', ')}` };
    const found = differences('', got, c.expect, c);
    return found.length === 0 ? { ...base, outcome: 'agrees' } : { ...base, outcome: 'differs', differences: found };
  } catch (error) {
    if (error instanceof Unsupported) return { ...base, outcome: 'unsupported', reason: error.message };
    return { ...base, outcome: 'differs', differences: [`${error instanceof Error ? error.message : String(error)}`] };
  }
}
