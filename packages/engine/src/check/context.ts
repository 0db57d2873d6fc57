import type { CompleteBrief } from '../brief/complete.js';
import type { Catalogue } from '../catalogue/schema.js';
import type { Design } from '../design/types.js';
import { type CalculationValue, val } from '../floor/calculation.js';
import type { RuleUsed } from '../floor/finding.js';
import type { RuleId } from '../rules/known.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';

/** All that a check may look at. Checks change nothing. */
export interface CheckContext {
  readonly brief: CompleteBrief;
  readonly design: Design;
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
}

/** The rule as a finding quotes it. */
export function ruleUsed(rules: SiteRules, id: RuleId): RuleUsed {
  const rule = rules.byId[id];
  const used = { id, text: `${rule.meaning}: ${rule.written}`, source: rule.source };
  return rule.overriddenBecause === undefined ? used : { ...used, overriddenBecause: rule.overriddenBecause };
}

/** The value of a rule as it goes into a step. */
export const ruleValue = (context: CheckContext, id: RuleId, unit: string, factor = 1): CalculationValue =>
  val(ruleNumber(context.rules, id) * factor, unit, context.rules.byId[id].meaning, `rule ${id}`);
