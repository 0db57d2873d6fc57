import { useMemo } from 'react';
import type { Design } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';
import { amendedTexts as say } from '../texts/shelf-versions.js';
import { pricesOf } from './catalogue-data.js';
import { figuresOfItems } from './changed-figures.js';

/** Where the price of an item comes from, and figures of it that this project changed: nothing for an item as the catalogue has it. */
export function AmendedItem({ item }: { readonly item: string }) {
  const data = useWorkbench((s) => s.computedData);
  const prices = useMemo(() => pricesOf(data).filter((price) => price.item === item), [data, item]);
  const figures = useMemo(() => figuresOfItems(data, new Set([item])), [data, item]);
  if (prices.length + figures.length === 0) return null;
  return (
    <ul className="amended">
      {prices.map((price) => (
        <li key={`${price.per} ${price.price}`}>
          {say.price(price.price, price.per ?? '', price.from, price.on)}
          {price.because && ` ${say.because(price.because)}`}
        </li>
      ))}
      {figures.map(({ field, value, because }) => (
        <li key={field}>{say.figure(field, value, because)}</li>
      ))}
    </ul>
  );
}

/** Figures that this project changed of the items that the subject of a finding is made of. */
export function AmendedSubject({ subject }: { readonly subject: string }) {
  const data = useWorkbench((s) => s.computedData);
  const design = useWorkbench((s) => s.computed?.design);
  const names = useWorkbench((s) => s.computed?.itemNames);
  const figures = useMemo(
    () => (design ? figuresOfItems(data, itemsOfSubject(design, subject)) : []),
    [data, design, subject],
  );
  if (figures.length === 0) return null;
  return (
    <div className="amended-subject">
      <h4>{say.subject}</h4>
      <ul className="amended">
        {figures.map(({ item, field, value, because }) => (
          <li key={`${item} ${field}`}>
            {names?.[item] ?? item}: {say.figure(field, value, because)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** A subject is a thing with parts, one part, or an item itself. */
const itemsOfSubject = ({ parts }: Pick<Design, 'parts'>, subject: string): ReadonlySet<string> =>
  new Set([subject, ...parts.filter((part) => part.of === subject || part.id === subject).map((part) => part.item)]);
