import '../engine/no-eval.js';
import { type CureProgress, type CureSearch, designFrom, searchCures } from '@cloche/engine';
import { expose } from 'comlink';
import type { CureFinder, CureStock } from './contract.js';

/** Searches in a thread of its own: it is ended when the person stops it or the brief changes. */
const finder: CureFinder = {
  find({ briefText, catalogueFiles, ruleTexts }: CureStock, id: string, told: (progress: CureProgress) => void) {
    const made = designFrom({ briefText, catalogueFiles, ruleTexts });
    if (!made.ok) return { cures: [], tried: 0 } satisfies CureSearch;
    const search = searchCures(made.value, id);
    for (;;) {
      const next = search.next();
      if (next.done) return next.value;
      told(next.value);
    }
  },
};
expose(finder);
