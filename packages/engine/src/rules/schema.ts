import { z } from 'zod';
import type { Source } from '../floor/source.js';
import { id, sourceSchema } from '../reading/quantity.js';
import type { RuleId } from './known.js';

export const rulesVersion = 1;

export const ruleProfileSchema = z.strictObject({
  cloche: z.literal(rulesVersion),
  profile: z.strictObject({
    id,
    title: z.string().min(1),
    jurisdiction: z.string().min(1),
    caution: z.string().min(1),
  }),
  rules: z.record(
    z.string(),
    z.strictObject({
      value: z.union([z.string(), z.number(), z.boolean()]),
      source: sourceSchema,
      caution: z.string().optional(),
    }),
  ),
});

export interface Rule {
  readonly id: RuleId;
  readonly meaning: string;
  /** SI number for quantities and numbers; the word for choices; 1 or 0 for yes and no. */
  readonly value: number | string;
  /** As written: `0.90 m`. */
  readonly written: string;
  readonly source: Source;
  readonly caution?: string;
  readonly overriddenBecause?: string;
}

/** The site rules in force for one project. */
export interface SiteRules {
  readonly profile: string;
  readonly title: string;
  readonly jurisdiction: string;
  readonly caution: string;
  readonly byId: Readonly<Record<RuleId, Rule>>;
  readonly hash: string;
}

/** The number of a rule; a rule that is a word instead is a bug of the caller. */
export function ruleNumber(rules: SiteRules, id: RuleId): number {
  const { value } = rules.byId[id];
  if (typeof value !== 'number') throw new Error(`rule ${id} is no number`);
  return value;
}
