import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import { z } from 'zod';
import { valueOf } from '../floor/problem.js';
import { readDocument } from './document.js';
import { problemsOf } from './problems-of.js';
import { id, money, point, q, size } from './quantity.js';

const schema = z.strictObject({
  cloche: z.literal(1),
  name: z.string().min(1).max(8),
  count: z.int().min(0).max(10),
  share: z.number(),
  kind: z.enum(['curtain', 'rigid panel']).optional(),
  sides: z.partialRecord(z.enum(['south', 'north']), z.strictObject({ item: id })).optional(),
  place: z.union([id, point]).optional(),
  leaves: z.union([z.literal(1), z.literal(2)]).optional(),
  emission: z
    .discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('continuous'), power: size('power') }),
      z.strictObject({ kind: z.literal('pulsed'), energy: size('energy') }),
    ])
    .optional(),
  doors: z
    .array(z.strictObject({ width: size('length'), sill: q('length', { min: 0, max: 2 }).optional() }))
    .optional(),
  price: money.optional(),
  date: z.iso.date().optional(),
  value: z.union([z.string(), z.number()]).optional(),
  list: z.array(z.string()).min(2).optional(),
  yes: z.boolean().optional(),
});

const good = { cloche: 1, name: 'a', count: 1, share: 0.5 };

const problems = (change: Record<string, unknown>) => {
  const document = valueOf(readDocument(stringify({ ...good, ...change }), 'brief', 'a.yaml'));
  const parsed = schema.safeParse(document.data);
  return parsed.success ? [] : problemsOf(parsed.error, { area: 'brief', schema, document, base: [] });
};

test('a sound document has no problems', () => {
  expect(problems({ place: ['1 m', '2 m'], emission: { kind: 'continuous', power: '1 W' } })).toEqual([]);
});

describe('one fault gives one problem, with code, path and hint', () => {
  test.each([
    ['unknown field at the top', { nmae: 'b' }, 'brief/unknown-field', 'nmae', 'name'],
    [
      'unknown field in a list',
      { doors: [{ width: '1 m', widht: '1 m' }] },
      'brief/unknown-field',
      'doors.0.widht',
      'width',
    ],
    ['unknown side', { sides: { sout: { item: 'a' } } }, 'brief/unknown-field', 'sides.sout', 'south'],
    [
      'unknown field in an alternative',
      { emission: { kind: 'pulsed', energy: '1 J', enrgy: '1 J' } },
      'brief/unknown-field',
      'emission.enrgy',
      'energy',
    ],
    ['another version', { cloche: 2 }, 'brief/wrong-version', 'cloche', 'cloche: 1'],
    ['missing number', { count: undefined }, 'brief/missing', 'count', 'count'],
    ['missing alternative', { emission: { power: '1 W' } }, 'brief/missing', 'emission.kind', 'continuous, pulsed'],
    ['missing quantity', { doors: [{ sill: '1 m' }] }, 'brief/missing', 'doors.0.width', '2.4 m'],
    ['text in place of a number', { count: 'two' }, 'brief/wrong-type', 'count', 'a number'],
    ['broken number', { count: 1.5 }, 'brief/wrong-type', 'count', 'a whole number'],
    ['number in place of a text', { name: 5 }, 'brief/wrong-type', 'name', 'a text'],
    ['nothing filled in', { name: null }, 'brief/wrong-type', 'name', 'leave the field out'],
    ['no truth value', { yes: 'yes' }, 'brief/wrong-type', 'yes', 'true, false'],
    ['list in place of text or number', { value: [1] }, 'brief/wrong-type', 'value', 'a text or a number'],
    ['unknown word', { kind: 'panel' }, 'brief/unknown-word', 'kind', 'rigid panel, curtain'],
    [
      'unknown word of an alternative',
      { emission: { kind: 'pulse' } },
      'brief/unknown-word',
      'emission.kind',
      'pulsed',
    ],
    ['unknown number of a few', { leaves: 3 }, 'brief/unknown-word', 'leaves', '1, 2'],
    ['number too small', { count: -1 }, 'brief/out-of-range', 'count', 'number'],
    ['number too large', { count: 11 }, 'brief/out-of-range', 'count', 'number'],
    ['empty text', { name: '' }, 'brief/out-of-range', 'name', 'Fill it in'],
    ['long text', { name: 'a name of many letters' }, 'brief/out-of-range', 'name', 'Shorten'],
    ['short list', { list: ['a'] }, 'brief/out-of-range', 'list', 'Add'],
    ['quantity out of range', { doors: [{ width: '1 m', sill: '3 m' }] }, 'brief/out-of-range', 'doors.0.sill', 'unit'],
    ['bare number', { doors: [{ width: 1 }] }, 'units/bare-number', 'doors.0.width', '2.4 m'],
    ['wrong unit', { doors: [{ width: '1 kg' }] }, 'units/wrong-unit', 'doors.0.width', '2.4 m'],
    ['short point', { place: ['1 m'] }, 'brief/out-of-range', 'place', 'Add'],
    ['bare number in a point', { place: ['1 m', 2] }, 'units/bare-number', 'place.1', '2.4 m'],
    ['name with blanks', { place: 'My Table' }, 'brief/malformed', 'place', 'bay-1'],
    ['no money', { price: 'cheap' }, 'brief/money', 'price', '12.50 EUR'],
    ['no date', { date: '1 May' }, 'brief/malformed', 'date', '2026-10-01'],
  ])('%s', (_, change, code, path, hint) => {
    const found = problems(change as Record<string, unknown>);
    expect(found.map((p) => [p.code, p.path.join('.')])).toEqual([[code, path]]);
    expect(found[0]!.hint).toContain(hint);
    expect(found[0]!.file).toBe('a.yaml');
    expect(found[0]!.place!.line).toBeGreaterThan(0);
  });
});

test('all faults are reported at once, in the order of the text', () => {
  const found = problems({ name: 5, count: -1, doors: [{ width: 3 }, { widht: '1 m' }] });
  expect(found.map(({ code }) => code)).toEqual([
    'brief/wrong-type',
    'brief/out-of-range',
    'units/bare-number',
    'brief/missing',
    'brief/unknown-field',
  ]);
  const lines = found.map(({ place }) => place!.line);
  expect(lines).toEqual([...lines].sort((a, b) => a - b));
});

test('the version that the file has and the one that is read are both named', () => {
  expect(problems({ cloche: 7 })[0]!.message).toBe('The file says version 7; this engine reads version 1.');
});
