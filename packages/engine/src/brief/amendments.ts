import { z } from 'zod';
import { id, money } from '../reading/quantity.js';

const price = z.strictObject({
  /** Catalogue item. */
  item: id,
  price: money,
  /** What the price is for: `piece`, `m`, `m2`, or the length of a stock piece of track, or the width of a panel of cloth. */
  per: z.string().min(1).optional(),
  /** Day of the offer. */
  on: z.iso.date(),
  /** Where the price comes from: `offer 4711`. */
  from: z.string().min(1),
  because: z.string().min(1).optional(),
});

const change = z.strictObject({
  /** Catalogue item. */
  item: id,
  /** The figure, as it is called in the catalogue: `capacity`, `supportSpacing.ceiling`, `drops.0`. */
  field: z.string().min(1),
  value: z.union([z.string(), z.number(), z.boolean()]),
  because: z.string().min(1),
});

/** What a project knows better than the catalogue: prices of an offer and figures changed with a reason. */
export const amendmentFields = {
  prices: z.array(price).optional(),
  changes: z.array(change).optional(),
};
