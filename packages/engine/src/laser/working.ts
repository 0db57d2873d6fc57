import type { CalculationStep } from '../floor/calculation.js';

const identifier = /\b[A-Za-z][A-Za-z0-9_]*\b/g;

/**
 * The same steps with a mark behind every symbol that they define, so that two limits (two editions, eye and skin, pulse and train)
 * can stand in one calculation without sharing a name. Names of plain inputs stay.
 */
export function marked(steps: readonly CalculationStep[], mark: string): CalculationStep[] {
  const defined = new Set(steps.map((s) => s.symbol));
  const renamed = (name: string) => (defined.has(name) ? `${name}_${mark}` : name);
  return steps.map((s) => ({
    ...s,
    symbol: renamed(s.symbol),
    expression: s.expression.replace(identifier, renamed),
    values: Object.fromEntries(
      Object.entries(s.values).map(([name, value]) => [
        renamed(name),
        value.origin?.startsWith('step ') ? { ...value, origin: `step ${renamed(value.origin.slice(5))}` } : value,
      ]),
    ),
  }));
}

/** Last of some steps; there is always one where it is asked for. */
export const lastOf = (steps: readonly CalculationStep[]): CalculationStep => {
  const last = steps.at(-1);
  if (!last) throw new Error('a calculation without steps');
  return last;
};
