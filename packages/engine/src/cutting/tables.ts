import { type Source, source } from '../floor/source.js';

export const cuttingSources = {
  kerf: source('geometry of cutting: one kerf between neighbours', 'derived') satisfies Source,
  volume: source('volume bound of bin packing', 'derived') satisfies Source,
  columnGeneration: source(
    'Gilmore & Gomory, Operations Research 9 (1961) and 11 (1963)',
    'from memory',
  ) satisfies Source,
  guillotine: source('slicing trees over subsets; area bound of packing', 'derived') satisfies Source,
} as const;
