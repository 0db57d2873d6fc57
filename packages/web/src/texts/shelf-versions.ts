const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;

/** Words of what lies on the shelf and became of it. */
export const versionTexts = {
  open: 'Shelf',
  openOf: 'Versions',
  title: 'What lies on the shelf',
  about:
    'Catalogue files and site rules that all projects on this server are computed with. Every version is kept: it can be saved as a file and put in force again.',
  kinds: { catalogue: 'Catalogue', rules: 'Site rules' },
  waiting: 'The shelf is being read.',
  states: {
    shipped: 'as shipped',
    replaced: 'replaced',
    brought: 'brought in',
    away: 'taken off',
  },
  versionsOf: (name: string) => `Versions of ${name}`,
  inForce: 'in force',
  shipped: 'What was shipped',
  wentBack: 'Went back to what was shipped',
  wentAway: 'Taken off the shelf',
  noFileName: 'Name of the file not told',
  because: (why: string) => `because ${why}`,
  counting: 'The versions are being compared.',
  difference: (kind: 'catalogue' | 'rules', added: number, removed: number, changed: number, head: boolean): string => {
    const what = kind === 'catalogue' ? 'item' : 'rule';
    const told = [
      ...(added > 0 ? [`${count(added, what)} added`] : []),
      ...(removed > 0 ? [`${count(removed, what)} removed`] : []),
      ...(changed > 0 ? [`${count(changed, what)} changed`] : []),
      ...(head ? ['the head changed'] : []),
    ];
    return told.length === 0 ? 'Nothing that counts differs from the one before.' : `${told.join(', ')}.`;
  },
  names: (ids: readonly string[]) =>
    ids.length > 12 ? `${ids.slice(0, 12).join(', ')} and ${ids.length - 12} more` : ids.join(', '),
  added: 'Added',
  removed: 'Removed',
  changed: 'Changed',
  save: 'Save as a file',
  saveOf: (name: string, when: string) => `Save as a file: ${name}, ${when}`,
  again: 'Put in force again',
  againOf: (name: string, when: string) => `Put in force again: ${name}, ${when}`,
  back: 'Back to what was shipped',
  backOf: (name: string) => `Back to what was shipped: ${name}`,
  takeOff: 'Take it off the shelf',
  takeOffOf: (name: string) => `Take it off the shelf: ${name}`,
  safe: 'The version that is in force now stays in this list.',
  reason: 'Why',
  needsReason: 'Say why: the reason stands in this list.',
  doIt: 'Do it',
  leave: 'Leave it',
  done: 'Done. All projects are computed with it from now on.',
  failed: 'The shelf stays as it is.',
  close: 'Close',
} as const;

/** Words that tell where an amended price or figure comes from. */
export const amendedTexts = {
  price: (price: string, per: string, from: string, on: string) =>
    `Price ${price}${per === '' ? '' : ` for ${/^\d/.test(per) ? per : `one ${per}`}`}, from ${from} of ${on}.`,
  figure: (field: string, value: string, because: string) =>
    `${field} is ${value} in this project, because ${because}.`,
  because: (why: string) => `Because ${why}.`,
  subject: 'Changed figures of its parts',
} as const;
