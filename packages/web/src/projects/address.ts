import { type StepName, stepNames } from '../state/steps.js';

/** What the address of the page names. */
export type Place = { readonly at: 'list' } | { readonly at: 'project'; readonly id: string; readonly step: StepName };

/** `#/` is the list of projects, `#/project/<id>/<step>` a project at a step. Null where the address names nothing. */
export function placeOf(hash: string): Place | null {
  const [, first, id, step] = hash.replace(/^#/, '').split('/');
  if (first === '') return { at: 'list' };
  if (first !== 'project' || id === undefined || !/^[0-9a-f]{32}$/.test(id)) return null;
  return { at: 'project', id, step: stepNames.find((name) => name === step) ?? 'survey' };
}

export const hashOf = (place: Place): string => (place.at === 'list' ? '#/' : `#/project/${place.id}/${place.step}`);
