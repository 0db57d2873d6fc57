import type { CompleteEnclosure } from '../brief/complete.js';
import type { Catalogue, Foot, Profile } from '../catalogue/schema.js';
import { numberText } from '../floor/number-text.js';
import { type Outcome, ok } from '../floor/problem.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';
import type { Try } from './choose-units.js';
import { chosenItem, itemsOf, priceOf } from './items.js';

const kinds = { levelling: 'levelling foot', 'foot plate': 'foot plate', caster: 'caster' } as const;

/**
 * Share of posts and hardware that the roof's mass does not hold, taken on top when feet are chosen (common practice); the
 * foot check uses the real mass.
 */
const allowance = 1.3;

/**
 * Chooses the feet: the cheapest of the profile's series that carry the load on all but one of them, else the strongest.
 * @param mass on the feet without posts and hardware [kg]
 */
export function chooseFoot(
  enclosure: CompleteEnclosure,
  path: readonly (string | number)[],
  profile: Profile,
  mass: number,
  posts: number,
  catalogue: Catalogue,
  rules: SiteRules,
): Outcome<{ readonly foot: Foot; readonly tries: readonly Try[] }> {
  const kind = kinds[enclosure.feet];
  const candidates = itemsOf<Foot>(catalogue, kind)
    .filter((f) => f.series === profile.slot.series)
    .sort((a, b) => priceOf(a) - priceOf(b));
  const carrying = Math.max(1, posts - ruleNumber(rules, 'frame.feet-carrying'));
  const each = (mass * allowance) / carrying;
  const enough = candidates.find((f) => f.capacity >= each);
  const strongest = [...candidates].sort((a, b) => b.capacity - a.capacity)[0];
  const chosen = chosenItem(enough ?? strongest, `${kind} for ${profile.slot.series}`, path);
  if (!chosen.ok) return chosen;
  const outcome = enough ? 'taken' : 'taken as the strongest of its kind';
  return ok({
    foot: chosen.value,
    tries: [
      {
        choice: 'feet',
        tried: `${chosen.value.id} for about ${numberText(each)} kg each on ${carrying} feet`,
        outcome,
      },
    ],
  });
}
