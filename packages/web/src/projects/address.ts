import { type StepName, stepNames } from '../state/steps.js';

/** What the address of the page names. */
export type Place =
  | { readonly at: 'list' }
  | { readonly at: 'fitting'; readonly id: string }
  | { readonly at: 'project'; readonly id: string; readonly step: StepName };

/** `#/` is the list of projects, `#/project/<id>/<step>` a project at a step, `#/fitting/<id>` its sheet for fitters. Null where the address names nothing. */
export function placeOf(hash: string): Place | null {
  const [, first, id, step] = hash.replace(/^#/, '').split('/');
  if (first === '') return { at: 'list' };
  if (id === undefined || !/^[0-9a-f]{32}$/.test(id)) return null;
  if (first === 'fitting') return { at: 'fitting', id };
  if (first !== 'project') return null;
  return { at: 'project', id, step: stepNames.find((name) => name === step) ?? 'survey' };
}

export function hashOf(place: Place): string {
  if (place.at === 'list') return '#/';
  return place.at === 'fitting' ? `#/fitting/${place.id}` : `#/project/${place.id}/${place.step}`;
}

/** Where a project is opened: on a screen as narrow as a phone's at the sheet for fitters. */
export const firstOf = (id: string, narrow = matchMedia('(max-width: 640px)').matches): Place =>
  narrow ? { at: 'fitting', id } : { at: 'project', id, step: 'survey' };
