import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { valueOf } from '../floor/problem.js';
import { type knownRules, ruleIds } from './known.js';
import { type RuleOverride, readRules } from './read.js';

const profile = (name: string) => readFileSync(new URL(`../../../../rules/${name}.yaml`, import.meta.url), 'utf8');

const changed = (
  change: (rules: Record<string, { value: unknown }>) => void,
  overrides: readonly RuleOverride[] = [],
) => {
  const data = parse(profile('eu'));
  change(data.rules);
  const read = readRules(stringify(data), 'eu.yaml', overrides);
  return read.ok ? [] : read.problems.map(({ code, path }) => [code, path.join('.')]);
};
const overridden = (...overrides: RuleOverride[]) => changed(() => undefined, overrides);

describe.each(['eu', 'us'])('the profile %s', (name) => {
  const rules = valueOf(readRules(profile(name), `${name}.yaml`));

  test('gives every rule with a source and a mark that admits how well it is backed', () => {
    expect(Object.keys(rules.byId).sort()).toEqual([...ruleIds].sort());
    for (const rule of Object.values(rules.byId)) {
      expect(rule.source.work.length).toBeGreaterThan(3);
      expect(['read', 'published', 'from memory', 'common practice']).toContain(rule.source.mark);
      expect(rule.written).not.toBe('');
    }
  });

  test('low ends lie below high ends', () => {
    const value = (id: keyof typeof knownRules) => rules.byId[id].value as number;
    expect(value('curtain.fullness-low')).toBeLessThan(value('curtain.fullness-high'));
    expect(value('curtain.hem-gap')).toBeLessThanOrEqual(value('curtain.hem-gap-most'));
    expect(value('laser.eye-height-seated')).toBeLessThan(value('laser.eye-height-standing'));
    expect(value('way.service-width')).toBeLessThan(value('way.clear-width'));
    expect(value('electric.board-depth-low')).toBeLessThanOrEqual(value('electric.board-depth'));
  });
});

// The source gives both units side by side: 29 CFR 1910.303(g)(1), 30 in (0.76 m); ADA 2010, 403.5.1, 36 in (0.915 m);
// NFPA 13 (2016), 8.5.6.1, 18 in (0.45 m). Tolerance: rounding of the metric figure.
test.each([
  ['electric.board-width', 0.76],
  ['way.clear-width', 0.915],
  ['fire.sprinkler-plane', 0.45],
] as const)('%s of the US profile is read in metres', (id, metres) => {
  const { value } = valueOf(readRules(profile('us'))).byId[id];
  expect(Math.abs((value as number) - metres)).toBeLessThan(0.008);
});

describe('a project overrides a rule', () => {
  const rules = valueOf(
    readRules(profile('eu'), 'eu.yaml', [{ rule: 'way.clear-width', value: '1.2 m', because: 'trolleys' }]),
  );

  test('with its own value, which is marked as entered and keeps the reason', () => {
    expect(rules.byId['way.clear-width']).toMatchObject({
      value: 1.2,
      written: '1.2 m',
      overriddenBecause: 'trolleys',
      source: { mark: 'entered' },
    });
  });

  test('and the hash of the rules in force tells', () => {
    expect(rules.hash).not.toBe(valueOf(readRules(profile('eu'))).hash);
  });

  test.each([
    [{ rule: 'way.clear-widht', value: '1 m', because: 'x' }, 'rules/unknown-rule', 'rule'],
    [{ rule: 'way.clear-width', value: 1, because: 'x' }, 'units/bare-number', 'value'],
    [{ rule: 'way.clear-width', value: true, because: 'x' }, 'rules/wrong-value', 'value'],
    [{ rule: 'laser.edition', value: 'IEC', because: 'x' }, 'rules/wrong-value', 'value'],
    [{ rule: 'frame.push-factor', value: 'two', because: 'x' }, 'rules/wrong-value', 'value'],
    [{ rule: 'frame.push-factor', value: -2, because: 'x' }, 'rules/negative', 'value'],
    [{ rule: 'frame.post-spacing', value: '0 m', because: 'x' }, 'rules/out-of-range', 'value'],
    [{ rule: 'frame.post-spacing', value: '1 mm', because: 'x' }, 'rules/out-of-range', 'value'],
    [{ rule: 'frame.strength-factor', value: 0.5, because: 'x' }, 'rules/out-of-range', 'value'],
    [{ rule: 'air.discharge-coefficient', value: 0, because: 'x' }, 'rules/out-of-range', 'value'],
    [{ rule: 'air.limit-share', value: '120 %', because: 'x' }, 'rules/out-of-range', 'value'],
    [{ rule: 'curtain.fullness-low', value: '50 %', because: 'x' }, 'rules/order', 'value'],
  ])('not with %o', (override, code, field) => {
    expect(overridden(override)).toEqual([[code, `site.overrides.0.${field}`]]);
  });

  test('zero stays possible where it means none', () => {
    const none = { rule: 'cutting.kerf', value: '0 mm', because: 'shears' };
    expect(valueOf(readRules(profile('eu'), 'eu.yaml', [none])).byId['cutting.kerf'].value).toBe(0);
  });

  test('not twice', () => {
    const one = { rule: 'way.clear-width', value: '1 m', because: 'x' };
    expect(overridden(one, one)).toEqual([['rules/overridden-twice', 'site.overrides.1.rule']]);
  });

  test('a wrong name is answered with the nearest rule', () => {
    const read = readRules(profile('eu'), 'eu.yaml', [{ rule: 'way.clear-widht', value: '1 m', because: 'x' }]);
    expect(read.ok ? '' : read.problems[0]!.hint).toContain('way.clear-width');
  });
});

describe('a profile is refused', () => {
  test('when a rule is missing', () => {
    const without = (rules: Record<string, unknown>) => {
      delete rules['way.headroom'];
    };
    expect(changed(without)).toEqual([['rules/missing-rule', 'rules']]);
  });

  test('when it has a rule that nobody asks for', () => {
    const extra = (rules: Record<string, { value: unknown }>) => {
      rules['way.colour'] = { ...rules['way.headroom']!, value: 'red' };
    };
    expect(changed(extra)).toEqual([['rules/unknown-rule', 'rules.way.colour']]);
  });

  test('when a value is of the wrong dimension', () => {
    const wrong = (rules: Record<string, { value: unknown }>) => {
      rules['way.headroom']!.value = '2 kg';
    };
    expect(changed(wrong)).toEqual([['units/wrong-unit', 'rules.way.headroom.value']]);
  });

  test('when a value has no source', () => {
    const wrong = (rules: Record<string, { value: unknown; source?: unknown }>) => {
      delete rules['way.headroom']!.source;
    };
    expect(changed(wrong)).toEqual([['rules/missing', 'rules.way.headroom.source']]);
  });

  test('when it is no text of ours', () => {
    const read = readRules('- a\n');
    expect(read.ok ? '' : read.problems[0]!.code).toBe('rules/not-a-record');
  });
});
