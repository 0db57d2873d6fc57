import { type CompleteBrief, completeBrief } from './brief/complete.js';
import { readBrief } from './brief/read.js';
import type { Brief } from './brief/schema.js';
import { type AmendmentInput, amendCatalogue } from './catalogue/amend.js';
import { type CatalogueFile, readCatalogue } from './catalogue/read.js';
import type { Catalogue } from './catalogue/schema.js';
import type { CheckContext } from './check/context.js';
import { composeDesign } from './compose/index.js';
import type { Design } from './design/types.js';
import { checkHeavy, checkLight } from './discipline/check.js';
import { type Finding, inOrder } from './floor/finding.js';
import { contentHash } from './floor/hash.js';
import { type Outcome, ok, type Problem, problem, refuse } from './floor/problem.js';
import { remembered } from './floor/remembered.js';
import { readRules } from './rules/read.js';
import type { SiteRules } from './rules/schema.js';

export interface DesignInput {
  readonly briefText: string;
  readonly file?: string;
  readonly catalogueFiles: readonly CatalogueFile[];
  /** Rule profiles by name. */
  readonly ruleTexts: Readonly<Record<string, string>>;
  /** Name of the profile to use instead of the brief's. */
  readonly profile?: string;
}

export interface DesignResult {
  readonly brief: Brief;
  readonly complete: CompleteBrief;
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
  readonly design: Design;
  readonly findings: readonly Finding[];
  /** Content hash of the design: the name of this revision. */
  readonly revision: string;
}

/** The profile used when a brief names none. */
const defaultProfile = 'eu';

/** Everything of a result but what the checks say, and the name of the state. */
export type Composed = Omit<DesignResult, 'findings' | 'revision'>;

/**
 * The whole way from text to findings: read, complete, compose, check. Everything that is wrong with brief, catalogue and rules
 * is returned at once.
 */
export function designFrom(input: DesignInput): Outcome<DesignResult> {
  const made = composedFrom(input);
  if (!made.ok) return made;
  const findings = inOrder([...lightFindings(made.value), ...heavyFindings(made.value)]);
  return ok({ ...made.value, findings, revision: revisionOf(made.value) });
}

/** The way up to the design; the checks of `designFrom` follow one by one. */
export function composedFrom(input: DesignInput): Outcome<Composed> {
  const brief = readBrief(input.briefText, input.file);
  const site = brief.ok ? brief.value.site : undefined;
  const catalogue = amendedCatalogueOf(input.catalogueFiles, site);
  const profile = input.profile ?? site?.rules ?? defaultProfile;
  const rules = rulesOf(profile, input.ruleTexts, site?.overrides ?? []);
  const problems: Problem[] = [brief, catalogue, rules].flatMap((o) => (o.ok ? [] : [...o.problems]));
  if (!brief.ok || !catalogue.ok || !rules.ok) return refuse(problems);
  const complete = completeBrief(brief.value, rules.value);
  const design = composeDesign(complete, catalogue.value, rules.value, contentHash(askedIn(brief.value)));
  if (!design.ok)
    return refuse(design.problems.map((p) => (input.file === undefined ? p : { ...p, file: input.file })));
  return ok({ brief: brief.value, complete, catalogue: catalogue.value, rules: rules.value, design: design.value });
}

/** What a design answers: background and kept distances only help to draw, so a revision keeps its name with them or without. */
function askedIn({ background: _, distances: __, ...asked }: Brief): Omit<Brief, 'background' | 'distances'> {
  return asked;
}

const contextOf = ({ complete, design, catalogue, rules }: Composed): CheckContext => ({
  brief: complete,
  design,
  catalogue,
  rules,
});

/** Findings of the checks that are quick enough to follow a hand that moves. */
export const lightFindings = (made: Composed): readonly Finding[] => checkLight(contextOf(made));
/** Findings of the checks that take longer. */
export const heavyFindings = (made: Composed): readonly Finding[] => checkHeavy(contextOf(made));
export const revisionOf = ({ design }: Pick<Composed, 'design'>): string => contentHash(design);

/** Catalogues by the list of their files. */
const catalogues = new WeakMap<readonly CatalogueFile[], Outcome<Catalogue>>();

/** The catalogue of these files; a hundred outlines take longer to read than a design to compute, so the same list is read once. */
export function catalogueFrom(files: readonly CatalogueFile[]): Outcome<Catalogue> {
  const before = catalogues.get(files);
  if (before) return before;
  const read = readCatalogue(files);
  catalogues.set(files, read);
  return read;
}

/** The last amendments of each catalogue: most edits of a brief leave them alone. */
const amended = new WeakMap<Catalogue, { readonly key: string; readonly outcome: Outcome<Catalogue> }>();

function amendedCatalogueOf(files: readonly CatalogueFile[], site: AmendmentInput | undefined): Outcome<Catalogue> {
  const read = catalogueFrom(files);
  if (!read.ok || !(site?.prices?.length || site?.changes?.length)) return read;
  const key = JSON.stringify([site.prices, site.changes]);
  const before = amended.get(read.value);
  if (before?.key === key) return before.outcome;
  const outcome = amendCatalogue(read.value, site);
  amended.set(read.value, { key, outcome });
  return outcome;
}

function rulesOf(
  profile: string,
  texts: Readonly<Record<string, string>>,
  overrides: readonly { readonly rule: string; readonly value: string | number | boolean; readonly because: string }[],
): Outcome<SiteRules> {
  const text = texts[profile];
  if (text === undefined)
    return refuse([
      problem(
        'rules/unknown-profile',
        ['site', 'rules'],
        `There is no rule profile "${profile}".`,
        `Known: ${Object.keys(texts).join(', ')}.`,
      ),
    ]);
  return rulesInForce(text, `${profile}.yaml`, overrides);
}

const rulesInForce = remembered(readRules);
