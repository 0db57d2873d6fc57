import type { Catalogue, Profile } from '../catalogue/schema.js';
import { profileSection } from '../design/profile-section.js';
import { overLimit } from '../floor/finding.js';
import { millimetreText, numberText } from '../floor/number-text.js';
import { type Outcome, ok } from '../floor/problem.js';
import { aluminium, singleSpan } from '../frame/index.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';
import type { Try } from './choose-units.js';
import { chosenItem, findItem, itemsOf } from './items.js';
import type { BeamLoad } from './roof-loads.js';

/** Worst of deflection and stress over its limits, for one beam of one profile; infinite when the section cannot be computed. */
function utilisation(beam: BeamLoad, profile: Profile, rules: SiteRules): number {
  const section = profileSection(profile);
  if (!section.ok) return Number.POSITIVE_INFINITY;
  const span = singleSpan({
    ends: 'simple',
    span: beam.span,
    elasticity: aluminium.elasticity,
    secondMoment: section.value.ix,
    uniform: beam.uniform,
    points: beam.points,
  });
  if (!span.ok) return Number.POSITIVE_INFINITY;
  const ratio = beam.carriesTrack
    ? Math.max(ruleNumber(rules, 'frame.roof-deflection'), ruleNumber(rules, 'frame.track-deflection'))
    : ruleNumber(rules, 'frame.roof-deflection');
  const limit = Math.min(beam.span / ratio, ruleNumber(rules, 'frame.roof-deflection-most'));
  const stress = Math.abs(span.value.moment.value) / section.value.wx;
  return Math.max(
    Math.abs(span.value.deflection.value) / limit,
    (stress * ruleNumber(rules, 'frame.strength-factor')) / profile.proofStrength,
  );
}

/** Profiles from the weakest to the strongest upright. */
const byStrength = (catalogue: Catalogue): Profile[] =>
  itemsOf<Profile>(catalogue, 'profile')
    .map((profile) => ({ profile, section: profileSection(profile) }))
    .sort((a, b) => (a.section.ok ? a.section.value.ix : 0) - (b.section.ok ? b.section.value.ix : 0))
    .map(({ profile }) => profile);

/**
 * Chooses the profile: as asked, else the weakest in the catalogue whose roof beams all keep deflection and stress; when none
 * does, the strongest, so that the check says what is missing. Every try is recorded.
 * @param loadsFor roof loads as they are with a profile (own weight, spans)
 */
export function chooseProfile(
  asked: string | undefined,
  path: readonly (string | number)[],
  catalogue: Catalogue,
  rules: SiteRules,
  loadsFor: (profile: Profile) => readonly BeamLoad[],
): Outcome<{ readonly profile: Profile; readonly tries: readonly Try[] }> {
  if (asked !== undefined) {
    const found = findItem<Profile>(catalogue, asked, ['profile'], path);
    return found.ok ? ok({ profile: found.value, tries: [] }) : found;
  }
  const tries: Try[] = [];
  const candidates = byStrength(catalogue);
  for (const profile of candidates) {
    const worst = loadsFor(profile).reduce<{ u: number; beam: BeamLoad | undefined }>(
      (so, beam) => {
        const u = utilisation(beam, profile, rules);
        return u > so.u ? { u, beam } : so;
      },
      { u: 0, beam: undefined },
    );
    const fits = !overLimit(worst.u);
    const words = worst.beam
      ? `${worst.beam.kind} beam of ${millimetreText(worst.beam.span)} at ${numberText(worst.u)} of its limit`
      : 'no roof load';
    tries.push({ choice: 'profile', tried: profile.id, outcome: fits ? `taken: ${words}` : words });
    if (fits) return ok({ profile, tries });
  }
  const strongest = chosenItem(candidates.at(-1), 'profile', path);
  return strongest.ok ? ok({ profile: strongest.value, tries }) : strongest;
}
