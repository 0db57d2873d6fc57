import { priceTexts as say } from '../texts/shelf.js';
import { PriceListDialog } from './price-list-dialog.js';
import { usePriceList } from './price-list-state.js';

/** Opens the reader of price lists. */
export function PriceListButton() {
  const open = usePriceList((s) => s.open);
  return (
    <>
      <button type="button" onClick={() => usePriceList.setState({ open: true })}>
        {say.open}
      </button>
      {open && <PriceListDialog close={() => usePriceList.setState({ open: false })} />}
    </>
  );
}
