import { say } from '../../say.ts';
import '../../styles/tasks.css';
import '../set-up/set-up.css';
import { useState } from 'preact/hooks';
import type { RecordOf } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { ClosedNotice, useClosed } from '../../parts/closed-season.tsx';
import { Money } from '../../parts/figures.tsx';
import { Page } from '../../parts/page.tsx';
import { StopSale } from '../../parts/stop-sale.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { useFocusBack } from '../../parts/use-focus-back.ts';
import { FieldsForm } from '../set-up/fields-form.tsx';
import { PriceHistory } from './price-history.tsx';
import { priceForm, productForm } from './product-forms.ts';

type Product = RecordOf<'product'>;

/** Which form is open: a new product, an edit, or a new price from a day. */
type Open =
  | { readonly what: 'add' }
  | { readonly what: 'edit' | 'price'; readonly product: Product };

/** Products with their price, case and price history. */
export function ProductsScreen() {
  const book = useBook();
  const { ledger } = book;
  const closed = useClosed() !== undefined;
  const [open, setOpen] = useState<Open | undefined>(undefined);
  const today = book.workingDay();
  const within = useFocusBack(open && openedBy(open));
  const products = [...ledger.setup.products.values()].sort(
    (a, b) => Number(a.retired === true) - Number(b.retired === true) || (a.name < b.name ? -1 : 1),
  );
  const columns: readonly Column<Product>[] = [
    {
      head: say`Product`,
      cell: (row) => (
        <>
          {row.name} {row.retired && <span class="soft">{say`(retired)`}</span>}
          <StopSale product={row.product} />
        </>
      ),
    },
    {
      head: say`Price now`,
      number: true,
      cell: (row) => <Money minor={ledger.priceOn(row.product, today)} plain />,
    },
    { head: say`Case`, number: true, cell: (row) => row.case, wide: true },
    { head: say`Kept at`, cell: (row) => row.storage ?? '', wide: true },
    { head: say`Goes back`, cell: (row) => (row.returnable ? say`yes` : say`no`), wide: true },
    { head: say`Prices`, cell: (row) => <PriceHistory product={row} /> },
  ];
  const change: Column<Product> = {
    head: say`Change`,
    verbs: true,
    cell: (row) => (
      <span class="row-verbs">
        <Button
          quiet
          label={say`New price of ${row.name}`}
          onClick={() => setOpen({ what: 'price', product: row })}
        >
          {say`New price`}
        </Button>
        <Button
          quiet
          label={say`Edit ${row.name}`}
          onClick={() => setOpen({ what: 'edit', product: row })}
        >
          {say`Edit`}
        </Button>
      </span>
    ),
  };
  return (
    <Page
      title={say`Products`}
      above={<a href="/set-up">{say`Set-up`}</a>}
      lead={say`A new price holds from its day on; what was recorded before keeps the old one.`}
    >
      <ClosedNotice />
      <div ref={within}>
        {open !== undefined && !closed && (
          <OpenForm open={open} onDone={() => setOpen(undefined)} />
        )}
        {open === undefined && !closed && (
          <p class="button-row">
            <Button onClick={() => setOpen({ what: 'add' })}>{say`Add a product`}</Button>
            <a class="button button-plain" href="/set-up/price-list">
              {say`Paste a price list`}
            </a>
            <a class="button button-plain" href="/set-up/holds">
              {say`Stop-sales`}
            </a>
          </p>
        )}
        <div class="stack stack-things">
          <Table
            caption={say`Products`}
            rows={products}
            keyOf={(row) => row.product}
            columns={closed ? columns : [...columns, change]}
            none={say`No product yet. Add the first one from the supplier’s price list.`}
          />
        </div>
      </div>
    </Page>
  );
}

/** The button that opens a form, by its words. */
function openedBy(open: Open): string {
  if (open.what === 'add') return say`Add a product`;
  const { name } = open.product;
  return open.what === 'edit' ? say`Edit ${name}` : say`New price of ${name}`;
}

function OpenForm(props: { readonly open: Open; readonly onDone: () => void }) {
  const book = useBook();
  const { open } = props;
  const form =
    open.what === 'price'
      ? priceForm(book, open.product)
      : productForm(book, open.what === 'edit' ? open.product : undefined);
  return (
    <FieldsForm
      key={open.what === 'add' ? 'add' : `${open.what} ${open.product.product}`}
      {...form}
      onDone={props.onDone}
      onCancel={props.onDone}
    />
  );
}
