import { parse } from 'yaml';
import { shownText, valueAt } from '../brief/path.js';

/** One value of a profile, as written, with its source. */
export interface ProfileRule {
  readonly id: string;
  readonly value: string;
  readonly work: string;
  readonly clause: string;
  readonly mark: string;
  readonly caution: string;
}

export interface RuleProfile {
  readonly id: string;
  readonly title: string;
  readonly jurisdiction: string;
  readonly caution: string;
  readonly text: string;
  readonly rules: readonly ProfileRule[];
}

/** Profiles of site rules as written. */
export function ruleProfiles(texts: Readonly<Record<string, string>>): readonly RuleProfile[] {
  return Object.entries(texts).map(([id, text]) => {
    const read: unknown = parse(text);
    const head = (key: string) => shownText(valueAt(read, ['profile', key]));
    const rules = valueAt(read, ['rules']);
    return {
      id,
      text,
      title: head('title'),
      jurisdiction: head('jurisdiction'),
      caution: head('caution'),
      rules: Object.entries(typeof rules === 'object' && rules !== null ? rules : {}).map(([name, rule]) => {
        const at = (...path: string[]) => shownText(valueAt(rule, path));
        return {
          id: name,
          value: at('value'),
          work: at('source', 'work'),
          clause: at('source', 'clause'),
          mark: at('source', 'mark'),
          caution: at('caution'),
        };
      }),
    };
  });
}
