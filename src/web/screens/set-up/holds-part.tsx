import { setupKey } from '../../../ledger/setup.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';
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
        {say`Follow the supplier’s notice and local rules first: keep the units apart, do not sell
          or give them away, and tell the families who have some.`}
      </p>
      <EditableList
        spec={{
          caption: say`Stop-sales`,
          add: [say`Add a stop-sale`, say`Add the stop-sale`],
          none: say`No stop-sale. Add one as soon as the supplier names a product.`,
          rows: [...holds.values()],
          columns: [
            { head: say`Product`, cell: (row) => productName(ledger.setup, row.product) },
            { head: say`Lot`, cell: (row) => row.lot ?? say`all lots` },
            { head: say`Reason`, cell: (row) => row.reason },
            { head: say`State`, cell: (row) => (row.lifted ? say`lifted` : say`stands`) },
          ],
          keyOf: (row) => setupKey(row),
          nameOf: (row) => say`the stop-sale of ${productName(ledger.setup, row.product)}`,
          fields: [
            {
              name: 'product',
              label: say`Product`,
              kind: 'select',
              options,
              empty: say`Choose a product`,
            },
            {
              name: 'lot',
              label: say`Lot`,
              kind: 'text',
              optional: true,
              hint: say`Without a lot, every unit of the product is held.`,
            },
            { name: 'reason', label: say`Reason`, kind: 'long' },
            { name: 'lifted', label: say`Lifted: it may be sold again`, kind: 'check' },
          ],
          start: (row) => ({
            product: row?.product ?? '',
            lot: row?.lot ?? '',
            reason: row?.reason ?? '',
            lifted: row?.lifted ? 'yes' : '',
          }),
          read: (values, row) => {
            const reading = new Reading(values, row);
            const product = reading.text('product', say`Choose the product.`);
            const lot = reading.optional('lot');
            const reason = reading.text('reason', say`Write the reason, as the supplier says it.`);
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
