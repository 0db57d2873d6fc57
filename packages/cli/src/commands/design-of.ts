import { type DesignResult, designFrom, type Outcome, refuse } from '@cloche/engine';
import { readCatalogueFolder, readRuleFiles, readText } from '../io/inputs.js';

export interface BriefOptions {
  readonly catalogue?: string;
  readonly rules?: string;
  readonly json?: boolean;
}

/** The design of a brief file: reads everything, reports all problems of reading at once. */
export function designOf(file: string, options: BriefOptions): Outcome<DesignResult> {
  const brief = readText(file, 'brief');
  const catalogue = readCatalogueFolder(options.catalogue);
  const rules = readRuleFiles(options.rules);
  if (!brief.ok || !catalogue.ok || !rules.ok)
    return refuse([brief, catalogue, rules].flatMap((o) => (o.ok ? [] : [...o.problems])));
  return designFrom({
    briefText: brief.value,
    file,
    catalogueFiles: catalogue.value,
    ruleTexts: rules.value.texts,
    ...(rules.value.profile === undefined ? {} : { profile: rules.value.profile }),
  });
}
