import { readdirSync, readFileSync } from 'node:fs';
import { designFrom } from '@cloche/engine';
import fc from 'fast-check';
import { evaluate, parse } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { type Formula, needsBrackets, type Operator, parseFormula } from '../src/notes/parse-formula.js';

const root = new URL('../../../', import.meta.url);
const texts = (folder: string) =>
  readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => ({ name, text: readFileSync(new URL(folder + name, root), 'utf8') }));
const catalogueFiles = texts('catalogue/');
const ruleTexts = Object.fromEntries(texts('rules/').map(({ name, text }) => [name.replace('.yaml', ''), text]));

/** The tree written in one line, by the same rule of brackets as on the sheet. */
function inLine(part: Formula): string {
  const side = (of: Formula, operator: Operator, where: 'left' | 'right') =>
    needsBrackets(of, operator, where) ? `(${inLine(of)})` : inLine(of);
  switch (part.is) {
    case 'number':
    case 'name':
      return part.text;
    case 'call':
      return `${part.name}(${part.of.map(inLine).join(', ')})`;
    case 'minus':
      return `-${side(part.of, '-', 'right')}`;
    default:
      return `${side(part.left, part.is, 'left')} ${part.is} ${side(part.right, part.is, 'right')}`;
  }
}

const steps = texts('examples/').flatMap(({ text: briefText }) => {
  const made = designFrom({ briefText, catalogueFiles, ruleTexts });
  return made.ok ? made.value.findings.flatMap((f) => f.calculation?.steps ?? []) : [];
});
const expressions = [...new Set(steps.map((step) => step.expression))];

describe('every formula of the examples', () => {
  test('is read and keeps its value when it is written again (checked with mathjs)', () => {
    expect(expressions.length).toBeGreaterThan(100);
    for (const step of steps) {
      const tree = parseFormula(step.expression);
      expect(tree, step.expression).not.toBeNull();
      const scope = Object.fromEntries(Object.entries(step.values).map(([name, { value }]) => [name, value]));
      const [wanted, got] = [evaluate(step.expression, scope), evaluate(inLine(tree!), scope)];
      expect(Math.abs(got - wanted)).toBeLessThanOrEqual(1e-9 * Math.abs(wanted));
    }
  });
});

const tree: fc.Arbitrary<Formula> = fc.letrec<{ tree: Formula }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4 },
    fc.constantFrom('2', '3', '0.5').map((text): Formula => ({ is: 'number', text })),
    fc.constantFrom('a', 'b', 'c_1').map((text): Formula => ({ is: 'name', text })),
    tie('tree').map((of): Formula => ({ is: 'minus', of })),
    tie('tree').map((of): Formula => ({ is: 'call', name: 'abs', of: [of] })),
    fc
      .tuple(fc.constantFrom<Operator>('+', '-', '*', '/'), tie('tree'), tie('tree'))
      .map(([is, left, right]): Formula => ({ is, left, right })),
  ),
})).tree;

test('brackets are written where reading needs them: the same value comes back (checked with mathjs)', () => {
  const scope = { a: 1.7, b: -0.6, c_1: 2.3 };
  const value = (part: Formula): number => {
    switch (part.is) {
      case 'number':
        return Number(part.text);
      case 'name':
        return scope[part.text as keyof typeof scope];
      case 'call':
        return Math.abs(value(part.of[0]!));
      case 'minus':
        return -value(part.of);
      default: {
        const [l, r] = [value(part.left), value(part.right)];
        return part.is === '+' ? l + r : part.is === '-' ? l - r : part.is === '*' ? l * r : l / r;
      }
    }
  };
  fc.assert(
    fc.property(tree, (part) => {
      const [wanted, got] = [value(part), evaluate(inLine(part), scope) as number];
      return !Number.isFinite(wanted) || Math.abs(got - wanted) <= 1e-6 * Math.max(1, Math.abs(wanted));
    }),
    { seed: 5, numRuns: 400 },
  );
});

test('powers bind from the right, and before a sign', () => {
  for (const text of ['2^3^2', '-2^2', '2^-1', '(-2)^2', '(2^3)^2', '1/r1^2', 'a/(b*c)', 'a/b*c']) {
    const scope = { a: 3, b: 4, c: 5, r1: 2 };
    expect(parse(inLine(parseFormula(text)!)).evaluate(scope)).toBeCloseTo(parse(text).evaluate(scope) as number, 12);
  }
});

test.each(['', 'a +', '(a', 'a b', 'f(', 'a ? b', '1..2'])('"%s" is no formula', (text) => {
  expect(parseFormula(text)).toBeNull();
});
