import { contentHash } from '../floor/hash.js';
import { numberText } from '../floor/number-text.js';
import { type Outcome, ok, type Problem, problem, refuse } from '../floor/problem.js';
import { dimensions, parseQuantity } from '../floor/units.js';
import { readDocument } from '../reading/document.js';
import { byLikeness, meantHint } from '../reading/nearest.js';
import type { Path } from '../reading/path.js';
import { problemsOf } from '../reading/problems-of.js';
import { type KnownRule, knownRules, type RuleId, type RuleShape, ruleIds } from './known.js';
import { type Rule, ruleProfileSchema, type SiteRules } from './schema.js';

type Written = string | number | boolean;

/** A value that one project puts in place of the profile's, and why. */
export interface RuleOverride {
  readonly rule: string;
  readonly value: Written;
  readonly because: string;
}

/**
 * Reads a profile of site rules and puts a project's own values over it.
 *
 * The tool only compares with the figures that stand in the profile; the local code and the appointed persons decide.
 * @param text      the profile, YAML or JSON [-]
 * @param file      its name, for the problems [-]
 * @param overrides the project's own values; their problems have paths from `site` on, as in the brief [-]
 * @returns         the rules in force, or every problem at once: those of the text and the schema,
 *                  `rules/unknown-rule`, `rules/missing-rule`, `rules/wrong-value`, `rules/negative`, `rules/out-of-range`, `rules/order`,
 *                  `rules/overridden-twice`
 *                  and those of quantities
 * Source: our own format; each value carries its own source.
 */
export function readRules(text: string, file?: string, overrides: readonly RuleOverride[] = []): Outcome<SiteRules> {
  const read = readDocument(text, 'rules', file);
  if (!read.ok) return read;
  const document = read.value;
  const parsed = ruleProfileSchema.safeParse(document.data);
  if (!parsed.success)
    return refuse(problemsOf(parsed.error, { area: 'rules', schema: ruleProfileSchema, document, base: [] }));

  const { profile, rules } = parsed.data;
  const problems: Problem[] = [];
  const inProfile = (path: Path, found: readonly Problem[]) => {
    for (const each of found)
      problems.push({ ...each, path, place: document.place(path), ...(file === undefined ? {} : { file }) });
  };
  for (const name of Object.keys(rules)) if (!isKnown(name)) inProfile(['rules', name], [unknownRule(name)]);
  inProfile(['rules'], missingRules(Object.keys(rules)));

  const found = new Map<RuleId, Rule>();
  for (const id of ruleIds) {
    const entry = rules[id];
    if (!entry) continue;
    const value = readValue(id, entry.value);
    if (!value.ok) inProfile(['rules', id, 'value'], value.problems);
    else
      found.set(id, {
        id,
        meaning: knownRules[id].meaning,
        value: value.value,
        written: writtenText(entry.value),
        source: entry.source as Rule['source'],
        ...(entry.caution === undefined ? {} : { caution: entry.caution }),
      });
  }
  problems.push(...override(found, overrides), ...(problems.length > 0 ? [] : orderProblems(found, overrides)));
  if (problems.length > 0) return refuse(problems);

  // Each id is there: a missing one was a problem above.
  const byId = Object.fromEntries(found) as Record<RuleId, Rule>;
  const head = {
    profile: profile.id,
    title: profile.title,
    jurisdiction: profile.jurisdiction,
    caution: profile.caution,
  };
  return ok({ ...head, byId, hash: contentHash({ ...head, byId }) });
}

const isKnown = (name: string): name is RuleId => Object.hasOwn(knownRules, name);

const unknownRule = (name: string): Problem =>
  problem('rules/unknown-rule', [], `${name} is no rule that this engine knows.`, meantHint(name, ruleIds));

const missingRules = (names: readonly string[]): Problem[] =>
  ruleIds
    .filter((id) => !names.includes(id))
    .map((id) =>
      problem(
        'rules/missing-rule',
        [],
        `The profile gives no value for ${id} (${knownRules[id].meaning}).`,
        `Add ${id} with its value and source; ${shapeText(knownRules[id].shape)} is needed.`,
      ),
    );

/** Puts the project's values in place; gives back what is wrong with them. */
function override(found: Map<RuleId, Rule>, overrides: readonly RuleOverride[]): Problem[] {
  const seen = new Set<string>();
  return overrides.flatMap(({ rule: name, value, because }, index) => {
    const path = ['site', 'overrides', index];
    if (!isKnown(name)) return [{ ...unknownRule(name), path: [...path, 'rule'] }];
    if (seen.has(name))
      return [
        problem(
          'rules/overridden-twice',
          [...path, 'rule'],
          `${name} is overridden twice.`,
          'Keep one of the two values.',
        ),
      ];
    seen.add(name);
    const read = readValue(name, value);
    if (!read.ok) return read.problems.map((each) => ({ ...each, path: [...path, 'value'] }));
    const rule = found.get(name);
    if (rule)
      found.set(name, {
        ...rule,
        value: read.value,
        written: writtenText(value),
        source: { work: 'brief', clause: `site.overrides, ${name}`, mark: 'entered' },
        overriddenBecause: because,
      });
    return [];
  });
}

/** Pairs of rules of which the first may not be above the second. */
const rising: readonly (readonly [RuleId, RuleId])[] = [
  ['curtain.fullness-low', 'curtain.fullness-high'],
  ['electric.board-depth-low', 'electric.board-depth'],
];

/** Bands that hold nothing; the path is that of the override that made them so, else of the profile. */
function orderProblems(found: ReadonlyMap<RuleId, Rule>, overrides: readonly RuleOverride[]): Problem[] {
  return rising.flatMap(([low, high]) => {
    const [a, b] = [found.get(low), found.get(high)];
    if (typeof a?.value !== 'number' || typeof b?.value !== 'number' || a.value <= b.value) return [];
    const at = Math.max(...[low, high].map((id) => overrides.findIndex((o) => o.rule === id)));
    return [
      problem(
        'rules/order',
        at < 0 ? ['rules', low, 'value'] : ['site', 'overrides', at, 'value'],
        `${low} is ${a.written}, above ${high}, which is ${b.written}.`,
        'Make the first the smaller one, or override both.',
      ),
    ];
  });
}

/** The value of a rule in SI; every known rule is a size or a share, so none is negative. */
function readValue(id: RuleId, written: Written): Outcome<number | string> {
  const { shape }: KnownRule = knownRules[id];
  const wrong = (hint = `Write ${shapeText(shape)}.`) =>
    refuse([problem('rules/wrong-value', [], `${writtenText(written)} is no value for ${id}.`, hint)]);
  if ('choice' in shape) {
    if (typeof written === 'string' && shape.choice.includes(written)) return ok(written);
    return wrong(`Use one of: ${byLikeness(String(written), shape.choice).join(', ')}.`);
  }
  if ('yesNo' in shape) return typeof written === 'boolean' ? ok(written ? 1 : 0) : wrong();
  if ('number' in shape) return typeof written === 'number' ? sensible(id, written, written) : wrong();
  if (typeof written === 'boolean') return wrong();
  const read = parseQuantity(String(written), shape.dimension);
  return read.ok ? sensible(id, read.value, written) : read;
}

/** Refuses a value at which the rule has no sense: below zero, or outside the limits that the rule names. */
function sensible(id: RuleId, value: number, written: Written): Outcome<number> {
  if (value < 0)
    return refuse([
      problem('rules/negative', [], `${id} is ${writtenText(written)}; it cannot be below zero.`, 'Check the sign.'),
    ]);
  const { shape, limits = {} }: KnownRule = knownRules[id];
  const unit = 'dimension' in shape ? ` ${dimensions[shape.dimension].si}` : '';
  const size = (limit: number): string => `${numberText(limit)}${unit}`;
  const no = (needed: string) =>
    refuse([
      problem(
        'rules/out-of-range',
        [],
        `${id} is ${writtenText(written)}; ${needed}.`,
        `It is the ${knownRules[id].meaning}: check the number and its unit.`,
      ),
    ]);
  const { above, least, most } = limits;
  if (above !== undefined && value <= above) return no(`more than ${size(above)} is needed`);
  if (least !== undefined && value < least * (1 - 1e-12)) return no(`at least ${size(least)} is needed`);
  if (most !== undefined && value > most * (1 + 1e-12)) return no(`at most ${size(most)} makes sense`);
  return ok(value);
}

function shapeText(shape: RuleShape): string {
  if ('dimension' in shape) return `a ${shape.dimension} with its unit`;
  if ('number' in shape) return 'a pure number';
  return 'choice' in shape ? `one of ${shape.choice.join(', ')}` : 'yes or no (true, false)';
}

const writtenText = (value: Written): string => (typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value));
