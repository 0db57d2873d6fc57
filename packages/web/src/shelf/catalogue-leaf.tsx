import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { handOver } from '../state/file.js';
import { shelfTexts as say } from '../texts/shelf.js';
import { versionTexts } from '../texts/shelf-versions.js';
import { BringFile } from './bring-file.js';
import type { CatalogueItem } from './catalogue-data.js';
import { ItemCard } from './item-card.js';
import { ShelfButton } from './shelf-dialog.js';
import { loadShelf, useShelf } from './shelf-store.js';

const matches = (item: CatalogueItem, wanted: string): boolean =>
  [item.id, item.name, item.kind, item.partNumber ?? ''].some((text) => text.toLowerCase().includes(wanted));

/** The parts that may be used, group by group; the one chosen with all that is known of it. */
export function CatalogueLeaf({ picker }: { readonly picker: ReactNode }) {
  const { items, files, state, trouble } = useShelf();
  const [wanted, setWanted] = useState('');
  const [chosen, setChosen] = useState<string | null>(null);
  useEffect(() => void loadShelf(), []);
  const groups = useMemo(() => {
    const byGroup = new Map<string, CatalogueItem[]>();
    for (const item of items.filter((each) => matches(each, wanted.trim().toLowerCase())))
      byGroup.set(item.group.title, [...(byGroup.get(item.group.title) ?? []), item]);
    return [...byGroup];
  }, [items, wanted]);
  const item = items.find(({ id }) => id === chosen);
  const file = item ? files.find(({ name }) => name === item.group.file) : undefined;
  return (
    <>
      <header className="schedule-head">
        {picker}
        <span className="second">{say.items(items.length)}</span>
        <span className="spring" />
        {file && (
          <button type="button" onClick={() => handOver(new Blob([file.text], { type: 'text/yaml' }), file.name)}>
            {say.save}
          </button>
        )}
        <ShelfButton kind="catalogue" label={versionTexts.openOf} />
        <BringFile kind="catalogue" name={item?.group.file.replace(/\.ya?ml$/, '') ?? ''} />
      </header>
      {trouble && <p className="trouble-text">{trouble}</p>}
      {state !== 'there' && !trouble && <p className="second">{say.waiting}</p>}
      <div className="catalogue">
        <nav className="catalogue-list" aria-label={say.search}>
          <input
            type="search"
            aria-label={say.search}
            placeholder={say.searchHint}
            value={wanted}
            onChange={(e) => setWanted(e.target.value)}
          />
          {state === 'there' && groups.length === 0 && <p className="second">{say.nothingFound}</p>}
          {groups.map(([group, ofGroup]) => (
            <section key={group}>
              <h3>{group}</h3>
              <ul>
                {ofGroup.map((each) => (
                  <li key={each.id}>
                    <button type="button" aria-pressed={each.id === chosen} onClick={() => setChosen(each.id)}>
                      <span>{each.name}</span>
                      <span className="second">{each.price ?? ''}</span>
                    </button>
                  </li>
                ))}
              </ul>
            </section>
          ))}
        </nav>
        <div className="shelf-scroll">
          {item ? <ItemCard key={item.id} item={item} /> : <p className="second">{say.chooseItem}</p>}
        </div>
      </div>
    </>
  );
}
