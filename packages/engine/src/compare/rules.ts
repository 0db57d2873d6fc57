import { compareText } from '../floor/text-order.js';
import type { Rule, SiteRules } from '../rules/schema.js';

/** A site rule with another value, or the same value overridden for another reason. */
export interface RuleChange {
  readonly id: string;
  readonly meaning: string;
  /** As written: `0.90 m`. */
  readonly before: string;
  readonly after: string;
}

/** Site rules that differ between two states, by id. */
export function compareRules(before: SiteRules, after: SiteRules): RuleChange[] {
  const is = new Map<string, Rule>(Object.entries(after.byId));
  return Object.entries<Rule>(before.byId)
    .flatMap(([id, was]): RuleChange[] => {
      const now = is.get(id);
      if (!now || (was.value === now.value && was.overriddenBecause === now.overriddenBecause)) return [];
      return [{ id, meaning: now.meaning, before: was.written, after: now.written }];
    })
    .sort((a, b) => compareText(a.id, b.id));
}
