import fc from 'fast-check';
import { expect, test } from 'vitest';
import { forgetRemembered, remembered } from './remembered.js';

test('an answer is computed once for inputs of the same content, and is the same answer', () => {
  let computed = 0;
  const half = remembered((of: { readonly n: number }) => {
    computed++;
    return { half: of.n / 2 };
  });
  const first = half({ n: 6 });
  expect(half({ n: 6 })).toBe(first);
  expect(computed).toBe(1);
  expect(half({ n: 8 })).toEqual({ half: 4 });
  expect(computed).toBe(2);
});

test('numbers without letters in JSON are told apart from each other and from nothing', () => {
  const spelling = remembered((n: number | null | string) => (Object.is(n, -0) ? '-0' : String(n)));
  const all = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, -0, null];
  expect(all.map((n) => spelling(n))).toEqual(['NaN', 'Infinity', '-Infinity', '0', '-0', 'null']);
  expect(all.map((n) => spelling(n))).toEqual(['NaN', 'Infinity', '-Infinity', '0', '-0', 'null']);
});

test('whatever is asked in whatever order, the answer is that of the function', () => {
  fc.assert(
    fc.property(
      fc.array(fc.record({ a: fc.integer({ min: 0, max: 900 }), b: fc.boolean() }), { maxLength: 60 }),
      (asked) => {
        const plain = (x: { readonly a: number; readonly b: boolean }) => (x.b ? x.a : -x.a - 1);
        const kept = remembered(plain);
        expect(asked.map((x) => kept(x))).toEqual(asked.map(plain));
      },
    ),
  );
});

test('what was not asked for while many others were is let go', () => {
  let computed = 0;
  const same = remembered((n: number) => {
    computed++;
    return n;
  });
  same(-1);
  for (let i = 0; i < 1000; i++) same(i);
  computed = 0;
  same(-1);
  expect(computed).toBe(1);
});

test('what is forgotten is computed anew', () => {
  let computed = 0;
  const same = remembered((n: number) => {
    computed++;
    return n;
  });
  same(1);
  forgetRemembered();
  same(1);
  expect(computed).toBe(2);
});
