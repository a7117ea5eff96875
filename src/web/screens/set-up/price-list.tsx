import { type Signal, useSignal } from '@preact/signals';
import {
  type PastedProduct,
  type ProposedProduct,
  proposeProducts,
  readPastedProducts,
} from '../../../intake/pasted-products.ts';
import { type Draft, useBook } from '../../book.ts';
import type { FieldError } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './set-up.css';
import { PasteBox, PasteForm, toFix } from './paste-box.tsx';
import { cellName, findingWords } from './paste-preview.tsx';

export type PastedPrices = Signal<readonly PastedProduct[]>;

/** A supplier's price list from a spreadsheet, into the open book. */
export function PastePriceList() {
  const { ledger, currency } = useBook();
  const rows: PastedPrices = useSignal([]);
  const proposed = proposeProducts(rows.value, ledger.setup.products.values(), currency);
  const drafts = draftsOf(proposed);
  return (
    <PasteForm
      {...boxOf(rows, proposed, currency)}
      label={say`Paste here`}
      hint={HINT}
      drafts={drafts}
      save={say.count(drafts.length)`Save # product|Save # products`}
      to="/products"
    />
  );
}

/** The same as a question of the first run, when there is no book yet to save it in. */
export function PriceListQuestion(props: {
  readonly rows: PastedPrices;
  readonly currency: string;
}) {
  const { rows, currency } = props;
  return (
    <PasteBox
      {...boxOf(rows, proposeProducts(rows.value, [], currency), currency)}
      label={say`What do you sell, and for how much?`}
      hint={HINT}
      optional
    />
  );
}

/** The products of a list for a new book, and one line for each row that is not right. */
export function priceList(
  rows: readonly PastedProduct[],
  currency: string,
): { readonly drafts: readonly Draft[]; readonly errors: readonly FieldError[] } {
  const proposed = proposeProducts(rows, [], currency);
  const errors = toFix(proposed).flatMap(({ cells, findings }) =>
    findings
      .filter(({ severity }) => severity === 'error')
      .slice(0, 1)
      .map(({ field, wanted }) => ({
        field: cellName(cells.line, field),
        words: say`Price list, row ${cells.line}: ${findingWords(wanted)}`,
      })),
  );
  return { drafts: draftsOf(proposed), errors };
}

const HINT = say`Paste the supplier’s price list from a spreadsheet: name, price of a unit, and
  units in a case, one product a row.`;

function boxOf(rows: PastedPrices, proposed: readonly ProposedProduct[], currency: string) {
  return {
    rows,
    read: readPastedProducts,
    proposed,
    columns: COLUMNS,
    becomes: (row: ProposedProduct) =>
      say`${say.money(row.price, currency)} a unit, ${row.case} in a case`,
    kept: say`Only the name, the price and the units in a case are taken over.`,
  };
}

const COLUMNS = [
  ['name', say`Name`],
  ['price', say`Price`],
  ['case', say`Case`],
] as const;

function draftsOf(proposed: readonly ProposedProduct[]): Draft[] {
  return proposed
    .filter((row) => row.state === 'new')
    .map(({ product, name, price, case: inCase }) => ({
      kind: 'product',
      product,
      name,
      price,
      case: inCase,
    }));
}
