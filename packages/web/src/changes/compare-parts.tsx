import {
  type Cost,
  costText,
  decimalText,
  differenceText,
  type Pair,
  type PartsComparison,
  sizeText,
  tellingSizes,
} from '@cloche/engine';
import type { ItemChange } from '../engine/contract.js';
import { changesTexts } from '../texts/changes.js';

/** Items whose pieces, sizes or cost differ, and the sums. */
export function CompareParts({ parts }: { readonly parts: PartsComparison }) {
  const { parts: say } = changesTexts;
  if (parts.items.length === 0) return <p className="second">{say.none}</p>;
  const { before, after } = parts.cost;
  return (
    <>
      <table className="compare-parts">
        <thead>
          <tr>
            <th scope="col">{say.item}</th>
            <th scope="col">{say.pieces}</th>
            <th scope="col">{say.mass}</th>
            <th scope="col">{say.cost}</th>
          </tr>
        </thead>
        <tbody>
          {parts.items.map((item) => (
            <ItemRow key={item.itemId} item={item} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{say.total}</th>
            <td>
              <FromTo before={String(parts.pieces.before)} after={String(parts.pieces.after)} />
            </td>
            <td>
              <FromTo before={kilograms(parts.mass.before)} after={kilograms(parts.mass.after)} />
            </td>
            <td>
              <CostCell cost={parts.cost} difference={parts.difference} />
            </td>
          </tr>
          <tr>
            <th scope="row">{say.sum}</th>
            <td colSpan={3}>
              <FromTo before={costText(before)} after={costText(after)} />
            </td>
          </tr>
        </tfoot>
      </table>
      {before.unpriced + after.unpriced > 0 && (
        <p className="unpriced">{say.unpriced(before.unpriced, after.unpriced)}</p>
      )}
    </>
  );
}

const kilograms = (kg: number): string => decimalText(kg, 1);

function ItemRow({ item }: { readonly item: ItemChange }) {
  return (
    <>
      <tr data-item={item.itemId}>
        <th scope="row">
          {item.name}
          {item.change !== 'changed' && <span className="second"> {changesTexts.geometry[item.change]}</span>}
        </th>
        <td>
          <FromTo before={String(item.pieces.before)} after={String(item.pieces.after)} />
        </td>
        <td>
          <FromTo before={kilograms(item.mass.before)} after={kilograms(item.mass.after)} />
        </td>
        <td>
          <CostCell cost={item.cost} difference={item.difference} />
        </td>
      </tr>
      {tellingSizes(item).map((size) => (
        <tr key={[size.length, size.width, size.thickness].join(' ')} className="size">
          <th scope="row">{sizeText(size)}</th>
          <td>
            {size.count.before} → {size.count.after}
          </td>
          <td />
          <td />
        </tr>
      ))}
    </>
  );
}

function FromTo({ before, after }: Pair<string>) {
  return before === after ? (
    after
  ) : (
    <>
      <span className="second">{before} → </span>
      {after}
    </>
  );
}

function CostCell({ cost, difference }: { readonly cost: Pair<Cost>; readonly difference: string | null }) {
  const text = differenceText(difference, cost);
  return text === '' ? <span className="second">±0</span> : text;
}
