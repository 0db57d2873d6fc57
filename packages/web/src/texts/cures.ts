/** Results that are named before the rest is only counted. */
const named = 3;

export const cureTexts = {
  search: 'Look for a cure',
  searching: 'Looking for a cure',
  stop: 'Stop looking',
  failed: 'The search met a fault:',
  noLever: 'No single change of a place, a size, a count or an item bears on this.',
  none: (tried: number) =>
    `No single change cures it; ${tried} were tried: moves up to 1 m, sizes, counts and other items of the catalogue.`,
  cures: (change: string) => `${change} cures it.`,
  helps: (change: string, verdict: string) =>
    `${change} helps: it is then ${verdict === 'attention' ? 'met, just' : verdict}.`,
  clean: 'Nothing else gets worse.',
  worse: (requirements: readonly string[]) => {
    const more = requirements.length - named;
    return `Gets worse by it, without failing: ${requirements.slice(0, named).join('; ')}${more > 0 ? `; ${more} more` : ''}.`;
  },
  apply: 'Do it',
} as const;
