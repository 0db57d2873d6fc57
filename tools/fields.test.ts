import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { briefSchema } from '@cloche/engine';
import { expect, test } from 'vitest';

const src = fileURLToPath(new URL('../packages/engine/src', import.meta.url));

/** Names that only describe: they stand on sheets, or nothing follows from them. */
const descriptive = new Set([
  'name', 'note', 'number', 'owner', 'author', 'contact', 'laserSafetyOfficer', 'invented', 'units', 'cloche', 'because', 'voltage', 'role', 'measured', 'shown', 'of',
]); // biome-ignore format: one list

/** Parts of a statement that is not assessed as a whole: scanned beams, and the supply that loads are not summed against. */
const partOfUnassessed = new Set(['scanRate', 'scanAngle', 'failureMonitor', 'available']);

interface Shaped {
  readonly shape?: Readonly<Record<string, unknown>>;
  readonly def?: {
    readonly innerType?: unknown;
    readonly element?: unknown;
    readonly options?: readonly unknown[];
    readonly valueType?: unknown;
  };
}

/** Every field name of a schema, through optional parts, lists, choices and records. */
function fieldNames(schema: unknown): string[] {
  const { shape, def } = (schema ?? {}) as Shaped;
  if (shape) return Object.entries(shape).flatMap(([name, inner]) => [name, ...fieldNames(inner)]);
  const inner = [def?.innerType, def?.element, def?.valueType, ...(def?.options ?? [])];
  return inner.filter((s) => s !== undefined).flatMap(fieldNames);
}

const textOf = (folder: string): string =>
  readdirSync(join(src, folder))
    .filter((f) => f.endsWith('.ts') && !f.endsWith('.test.ts'))
    .map((f) => readFileSync(join(src, folder, f), 'utf8'))
    .join('\n');

test('every field of the brief is used by composing or checking, or gives a finding that it is not assessed', () => {
  const code = ['compose', 'check', '.'].map(textOf).join('\n');
  const names = [...new Set(fieldNames(briefSchema))];
  expect(names.length).toBeGreaterThan(120);
  const silent = names.filter(
    (name) => !descriptive.has(name) && !partOfUnassessed.has(name) && !new RegExp(`\\b${name}\\b`).test(code),
  );
  expect(silent).toEqual([]);
});
