import { create } from 'zustand';
import type { TextFile } from '../engine/contract.js';
import { fetchTexts, troubleOf } from '../state/server.js';
import { reloadShelf } from '../state/store.js';
import { shelfTexts } from '../texts/shelf.js';
import { type CatalogueItem, catalogueItems } from './catalogue-data.js';
import { type RuleProfile, ruleProfiles } from './rule-data.js';

interface ShelfData {
  readonly files: readonly TextFile[];
  readonly items: readonly CatalogueItem[];
  readonly profiles: readonly RuleProfile[];
  readonly state: 'none' | 'loading' | 'there';
  readonly trouble: string | null;
}

/** Catalogue and site rules as they are written on the shelf. */
export const useShelf = create<ShelfData>(() => ({
  files: [],
  items: [],
  profiles: [],
  state: 'none',
  trouble: null,
}));

/** Reads the shelf when it is first looked at. */
export async function loadShelf(again = false): Promise<void> {
  if (useShelf.getState().state !== 'none' && !again) return;
  useShelf.setState({ state: 'loading', trouble: null });
  try {
    const { catalogue, rules } = await fetchTexts();
    const [items, profiles] = [catalogueItems(catalogue), ruleProfiles(rules)];
    useShelf.setState({ files: catalogue, items, profiles, state: 'there' });
  } catch (error) {
    useShelf.setState({ state: 'none', trouble: error instanceof Error ? error.message : String(error) });
  }
}

/** What a person changed on the shelf: null when it was done and is computed with, else what is wrong. */
export async function changeShelf(request: Promise<Response>): Promise<string | null> {
  const response = await request;
  if (!response.ok) return troublesOf(response);
  await Promise.all([reloadShelf(), loadShelf(true)]);
  return null;
}

interface ToldProblem {
  readonly message?: string;
  readonly hint?: string;
  readonly file?: string;
  readonly place?: { readonly line: number };
}

/** Every problem that a problem document lists, each with its place; else its title. */
async function troublesOf(response: Response): Promise<string> {
  const copy = response.clone();
  try {
    const { problems } = (await copy.json()) as { problems?: readonly ToldProblem[] };
    if (problems?.length) return problems.map(problemLine).join('\n');
  } catch {
    // No problem document: said below as what it is.
  }
  return troubleOf(response);
}

const problemLine = ({ message, hint, file, place }: ToldProblem): string =>
  [file && place ? shelfTexts.at(file, place.line) : undefined, message, hint].filter(Boolean).join(' ');
