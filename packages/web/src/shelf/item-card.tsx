import { useMemo, useState } from 'react';
import { openLeaf } from '../schedules/state.js';
import { pointParts, show, useWorkbench } from '../state/store.js';
import { shelfTexts as say } from '../texts/shelf.js';
import { type CatalogueItem, type PriceEntry, pricesOf } from './catalogue-data.js';
import { ChangeForm } from './change-form.js';
import { type Figure, figuresOf } from './figures-of.js';
import { OutlinePicture } from './outline-picture.js';
import { figureKey, giveBack, keepFigure, type OwnValue, ownFigures } from './overrides.js';

/** One item of the catalogue: picture, price with day and origin, figures that can be changed, and its use here. */
export function ItemCard({ item }: { readonly item: CatalogueItem }) {
  const data = useWorkbench((s) => s.data);
  const own = useMemo(() => ownFigures(data), [data]);
  const prices = useMemo(() => pricesOf(data).filter((p) => p.item === item.id), [data, item]);
  const [changing, setChanging] = useState<string | null>(null);
  return (
    <article className="item-card" aria-label={item.name}>
      <header>
        <div>
          <h2>{item.name}</h2>
          <p className="second">
            {[item.kind, item.partNumber, item.group.invented ? say.invented : null].filter(Boolean).join(', ')}
          </p>
        </div>
        <OutlinePicture item={item} />
      </header>
      <h3>{say.price}</h3>
      <Prices item={item} prices={prices} />
      <h3>{say.used}</h3>
      <Use item={item} />
      <h3>{say.figures}</h3>
      <dl className="figures">
        {figuresOf(item).map((figure) => (
          <FigureRow
            key={figure.field}
            item={item}
            figure={figure}
            own={own.get(figureKey(item.id, figure.field))}
            changing={changing === figure.field}
            change={(on) => setChanging(on ? figure.field : null)}
          />
        ))}
      </dl>
    </article>
  );
}

function Prices({ item, prices }: { readonly item: CatalogueItem; readonly prices: readonly PriceEntry[] }) {
  return (
    <>
      {prices.map((price) => (
        <p key={`${price.per} ${price.price}`}>
          <strong>{price.price}</strong> {price.per} <span className="second">{say.priceOf(price.on, price.from)}</span>
        </p>
      ))}
      {(prices.length === 0 || item.sizes.length > 0) && (
        <p>
          {item.price ?? (item.sizes.length > 0 ? '' : say.noPrice)}{' '}
          <span className="second">{say.priceOf(item.group.priceDate, item.group.priceBasis)}</span>
        </p>
      )}
      <button type="button" className="quiet" onClick={() => openLeaf('prices')}>
        {say.enterPrice}
      </button>
    </>
  );
}

function Use({ item }: { readonly item: CatalogueItem }) {
  const all = useWorkbench((s) => s.computed?.design.parts);
  const parts = useMemo(() => (all ?? []).filter((part) => part.item === item.id), [all, item]);
  if (parts.length === 0) return <p className="second">{say.notUsed}</p>;
  return (
    <p>
      {say.usedTimes(parts.reduce((sum, part) => sum + part.count, 0))}{' '}
      <button
        type="button"
        className="quiet"
        onClick={() => {
          pointParts(parts.map(({ id }) => id));
          show('plan');
        }}
      >
        {say.showUsed}
      </button>
    </p>
  );
}

function FigureRow({
  item,
  figure,
  own,
  changing,
  change,
}: {
  readonly item: CatalogueItem;
  readonly figure: Figure;
  readonly own: OwnValue | undefined;
  readonly changing: boolean;
  readonly change: (on: boolean) => void;
}) {
  const index = own?.path.at(-1);
  const problem = useWorkbench((s) =>
    own ? s.problems.find(({ path }) => path[1] === 'changes' && path[2] === index) : undefined,
  );
  return (
    <div className={own ? 'figure-row own' : 'figure-row'} data-field={figure.field}>
      <dt>{figure.label}</dt>
      <dd>
        {own ? own.value : figure.value}
        {own && <span className="second"> {`${say.instead(figure.value)}, ${say.reason(own.because)}`}</span>}
        {problem && <span className="trouble-text below">{`${problem.message} ${problem.hint}`}</span>}
      </dd>
      <dd className="acts">
        {figure.canChange && !changing && (
          <button
            type="button"
            className="quiet"
            aria-label={say.changeWhat(figure.label)}
            onClick={() => change(true)}
          >
            {say.change}
          </button>
        )}
        {own && !changing && (
          <button type="button" className="quiet" onClick={() => giveBack(own)}>
            {say.backCatalogue}
          </button>
        )}
      </dd>
      {changing && (
        <dd className="whole">
          <ChangeForm
            what={figure.label}
            value={own?.value ?? figure.value}
            because={own?.because ?? ''}
            check={() => null}
            keep={(value, because) => {
              keepFigure(item.id, figure.field, value, because);
              change(false);
            }}
            leave={() => change(false)}
          />
        </dd>
      )}
    </div>
  );
}
