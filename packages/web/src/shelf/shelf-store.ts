import { create } from 'zustand';
import type { TextFile } from '../engine/contract.js';
import { fetchTexts, troubleOf } from '../state/server.js';
import { reloadShelf } from '../state/store.js';
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

/** Puts a file on the shelf; what is wrong with it comes back as one text, and nothing has changed then. */
export async function putOnShelf(
  kind: 'catalogue' | 'rules',
  name: string,
  text: string,
  because: string,
): Promise<string | null> {
  // The shelf knows site rules by their profile, catalogue files by their whole name.
  const place = kind === 'rules' ? name : `${name}.yaml`;
  const response = await fetch(`api/shelf/${kind}/${encodeURIComponent(place)}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ text, because }),
  });
  if (!response.ok) return troublesOf(response);
  await Promise.all([reloadShelf(), loadShelf(true)]);
  return null;
}

/** The title of a problem document and every problem that it lists. */
async function troublesOf(response: Response): Promise<string> {
  const copy = response.clone();
  try {
    const { problems } = (await copy.json()) as { problems?: readonly { message?: string; hint?: string }[] };
    if (problems?.length) return problems.map((p) => [p.message, p.hint].filter(Boolean).join(' ')).join('\n');
  } catch {
    // No problem document: said below as what it is.
  }
  return troubleOf(response);
}
