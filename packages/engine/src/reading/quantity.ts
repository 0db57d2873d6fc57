import { z } from 'zod';
import { type Dimension, dimensions, parseQuantity } from '../floor/units.js';

/** Separates message from hint in the text that a schema check hands on. */
export const hintMark = '\u2192';

/**
 * A quantity written as text with its unit ("2.4 m"); the parsed document holds the SI number.
 * In the exported JSON Schema it is a string with the dimension in `x-dimension`.
 */
export const q = (
  dimension: Dimension,
  limits: { readonly min?: number; readonly max?: number; readonly above?: number; readonly example?: string } = {},
) =>
  z
    .unknown()
    .transform((raw, context): number => {
      const like = `Write it like ${limits.example ?? dimensions[dimension].example}.`;
      const say = (message: string, hint: string, code: string) => {
        context.addIssue({ code: 'custom', message: `${message}${hintMark}${hint}`, params: { code } });
        return z.NEVER;
      };
      if (typeof raw === 'number')
        return say(`${raw} is a bare number; a ${dimension} needs its unit.`, like, 'units/bare-number');
      if (typeof raw !== 'string')
        return say(
          raw === undefined ? `A ${dimension} is missing.` : `A ${dimension} is written as text with its unit.`,
          like,
          raw === undefined ? 'brief/missing' : 'brief/wrong-type',
        );
      const parsed = parseQuantity(raw, dimension);
      if (!parsed.ok) {
        const first = parsed.problems[0]!;
        return say(first.message, first.hint.startsWith('Write it like') ? like : first.hint, first.code);
      }
      const { si } = dimensions[dimension];
      const outside = (limit: string) =>
        say(
          `${raw} is out of range: a ${limit} is needed here.`,
          'Check the number and its unit.',
          'brief/out-of-range',
        );
      if (limits.above !== undefined && parsed.value <= limits.above)
        return outside(`${dimension} above ${limits.above} ${si}`);
      if (limits.min !== undefined && parsed.value < limits.min)
        return outside(`${dimension} of at least ${limits.min} ${si}`);
      if (limits.max !== undefined && parsed.value > limits.max)
        return outside(`${dimension} of at most ${limits.max} ${si}`);
      return parsed.value;
    })
    .meta({ dimension, limits });

/** A length, mass or the like that must be above zero. */
export const size = (dimension: Dimension) => q(dimension, { above: 0 });

/** A plan point: two lengths. */
export const point = z.tuple([q('length'), q('length')]).meta({ what: 'point' });

/** The short name of a thing: lower-case letters, digits and hyphens, so that it can stand in marks and file names. */
export const id = z
  .string()
  .regex(/^[a-z][a-z0-9-]*$/, {
    error: `A name must start with a letter and hold only lower-case letters, digits and hyphens.${hintMark}Write it like bay-1.`,
  })
  .max(40);

/** An amount of money: `1250.00 EUR`; the number is kept as it was written, in decimal. */
export const money = z
  .unknown()
  .transform((raw, context): Money => {
    const match = typeof raw === 'string' ? /^(-?\d+(?:\.\d+)?) ([A-Z]{3})$/.exec(raw.trim()) : null;
    if (!match) {
      context.addIssue({
        code: 'custom',
        message: `${JSON.stringify(raw)} is no amount of money.${hintMark}Write amount and ISO 4217 currency: 12.50 EUR.`,
        params: { code: 'brief/money' },
      });
      return z.NEVER;
    }
    if (match[1]!.startsWith('-')) {
      context.addIssue({
        code: 'custom',
        message: `${match[0]} is a negative amount.${hintMark}A price is zero or more; leave it out when it is not known.`,
        params: { code: 'catalogue/negative-price' },
      });
      return z.NEVER;
    }
    return { amount: match[1]!, currency: match[2]! };
  })
  .meta({ what: 'money' });

export interface Money {
  /** Decimal text; never a binary fraction. */
  readonly amount: string;
  readonly currency: string;
}

/** Where a value of a data file comes from. */
export const sourceSchema = z.strictObject({
  work: z.string().min(1),
  clause: z.string().optional(),
  mark: z.enum(['read', 'published', 'from memory', 'common practice', 'derived', 'computed', 'entered', 'invented']),
});
