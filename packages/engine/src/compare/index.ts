import type { Catalogue } from '../catalogue/schema.js';
import type { Design } from '../design/types.js';
import type { Finding } from '../floor/finding.js';
import type { SiteRules } from '../rules/schema.js';
import type { FieldChange } from './fields.js';
import { compareFindings, type Falls, type FindingChange, fallsOf, standsInTheWay } from './findings.js';
import { compareGeometry, type ThingChange } from './geometry.js';
import { compareParts, type Pair, type PartsComparison } from './parts.js';
import { compareProject } from './project.js';
import { compareRules, type RuleChange } from './rules.js';

export type { FieldChange } from './fields.js';
export {
  type Direction,
  type Falls,
  type FindingChange,
  type FindingChangeKind,
  type FindingState,
  standsInTheWay,
  utilisationTolerance,
} from './findings.js';
export type { ThingChange } from './geometry.js';
export {
  costText,
  differenceText,
  factText,
  fieldText,
  lengthText,
  movedText,
  sizeText,
  thingText,
  turnedText,
} from './messages.js';
export {
  type Balance,
  type Cost,
  costOfState,
  type ItemChange,
  type Pair,
  type PartsComparison,
  type SizeChange,
  tellingSizes,
} from './parts.js';
export type { RuleChange } from './rules.js';
export { type ThingKind, thingKinds } from './thing.js';

/** One computed state of a project: what `designFrom` gives. */
export interface ComparedState {
  readonly revision: string;
  readonly design: Design;
  readonly findings: readonly Finding[];
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
}

/** What differs between two states of a project. Plain, JSON-able; SI. */
export interface Comparison {
  /** Content hashes that name the two states. */
  readonly revisions: Pair<string>;
  /** Whether the parts may differ because the catalogue does. */
  readonly catalogueChanged: boolean;
  readonly rules: readonly RuleChange[];
  /** Names, persons and site rules in the title block. */
  readonly project: readonly FieldChange[];
  readonly geometry: readonly ThingChange[];
  readonly findings: readonly FindingChange[];
  readonly parts: PartsComparison;
  /** Results that no longer stand as they were told, by who decides on them. */
  readonly falls: readonly Falls[];
  /** True when something stands in the way that did not before: it fails, or is asked for and not assessed. */
  readonly worse: boolean;
}

/**
 * What differs between two states of a project: geometry, findings, parts with mass and cost, site rules, and which results fall.
 *
 * Things, findings and items are laid beside each other by their ids alone; nothing is guessed to be the same under another name.
 * @param before the earlier state
 * @param after  the later state
 * @returns      only what differs, in an order that depends on nothing but the two states
 */
export function compareDesigns(before: ComparedState, after: ComparedState): Comparison {
  const findings = compareFindings(before.findings, after.findings);
  return {
    revisions: { before: before.revision, after: after.revision },
    catalogueChanged: before.catalogue.hash !== after.catalogue.hash,
    rules: compareRules(before.rules, after.rules),
    project: compareProject(before.design, after.design),
    geometry: compareGeometry(before.design, after.design),
    findings,
    parts: compareParts(before, after),
    falls: fallsOf(findings),
    worse: findings.some(standsInTheWay),
  };
}
