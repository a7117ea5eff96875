import { setupKey } from '../../../ledger/setup.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { EditableList } from './editable-list.tsx';
import { Reading, replacing } from './reading.ts';

/** Recalls and stop-sales: shown wherever the product is listed until they are lifted. */
export function HoldsPart() {
  const { ledger } = useBook();
  const { holds, products } = ledger.setup;
  const options = [...products.values()].map(({ product, name }) => ({
    value: product,
    words: name,
  }));
  return (
    <>
      <p class="caution">
        Follow the supplier’s notice and local rules first: keep the units apart, do not sell or
        give them away, and tell the families who have some.
      </p>
      <EditableList
        spec={{
          caption: 'Stop-sales',
          one: 'stop-sale',
          none: 'No stop-sale. Add one as soon as the supplier names a product.',
          rows: [...holds.values()],
          columns: [
            { head: 'Product', cell: (row) => productName(ledger.setup, row.product) },
            { head: 'Lot', cell: (row) => row.lot ?? 'all lots' },
            { head: 'Reason', cell: (row) => row.reason },
            { head: 'State', cell: (row) => (row.lifted ? 'lifted' : 'stands') },
          ],
          keyOf: (row) => setupKey(row),
          nameOf: (row) => `the stop-sale of ${productName(ledger.setup, row.product)}`,
          fields: [
            {
              name: 'product',
              label: 'Product',
              kind: 'select',
              options,
              empty: 'Choose a product',
            },
            {
              name: 'lot',
              label: 'Lot',
              kind: 'text',
              optional: true,
              hint: 'Without a lot, every unit of the product is held.',
            },
            { name: 'reason', label: 'Reason', kind: 'long' },
            { name: 'lifted', label: 'Lifted: it may be sold again', kind: 'check' },
          ],
          start: (row) => ({
            product: row?.product ?? '',
            lot: row?.lot ?? '',
            reason: row?.reason ?? '',
            lifted: row?.lifted ? 'yes' : '',
          }),
          read: (values, row) => {
            const reading = new Reading(values, row);
            const product = reading.text('product', 'Choose the product.');
            const lot = reading.optional('lot');
            const reason = reading.text('reason', 'Write the reason, as the supplier says it.');
            return reading.done({
              kind: 'hold',
              product,
              reason,
              ...(lot === '' ? {} : { lot }),
              ...(reading.ticked('lifted') ? { lifted: true } : {}),
              ...replacing(row),
            });
          },
        }}
      />
    </>
  );
}
