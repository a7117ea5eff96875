import { useBook } from '../book.ts';
import { say } from '../say.ts';
import { type FieldProps, type Option, SelectField } from './field.tsx';
import { link } from './link.tsx';

/**
 * Pickers for things of the set-up, on the browser's own select (typing a name finds it).
 *
 *   <SellerPicker label="Seller" name="seller" value={id} onValue={setId} />
 */
interface PickerProps extends FieldProps {
  readonly value: string;
  readonly onValue: (id: string) => void;
  /** Words for "none"; without it a choice is asked for. */
  readonly none?: string;
}

const NO_SELLERS = (
  <>
    {say.pieces`No seller yet. ${link('/set-up/paste', say`Paste a seller list`)}, or
      ${link('/set-up/sellers', say`add a seller`)}.`}
  </>
);

/** Sellers by first name and initial, those who are not active any more last. */
export function SellerPicker(props: PickerProps) {
  const { sellers } = useBook().ledger.setup;
  const options: Option[] = [...sellers.values()]
    .sort((a, b) => Number(b.active) - Number(a.active) || (a.name < b.name ? -1 : 1))
    .map(({ seller, name, active }) => ({
      value: seller,
      words: name,
      ...(active ? {} : { group: say`Not selling any more` }),
    }));
  const hint = options.length > 0 ? props.hint : NO_SELLERS;
  return (
    <SelectField
      {...props}
      hint={hint}
      options={options}
      empty={props.none ?? say`Choose a seller`}
    />
  );
}

export function ProductPicker(props: PickerProps) {
  const { products } = useBook().ledger.setup;
  return named(props, products, (record) => record.product, say`Choose a product`);
}

export function FamilyPicker(props: PickerProps) {
  const { families } = useBook().ledger.setup;
  return named(props, families, (record) => record.family, say`Choose a family`);
}

function named<R extends { readonly name: string }>(
  props: PickerProps,
  records: ReadonlyMap<string, R>,
  idOf: (record: R) => string,
  choose: string,
) {
  const options = [...records.values()].map((record) => ({
    value: idOf(record),
    words: record.name,
  }));
  return <SelectField {...props} options={options} empty={props.none ?? choose} />;
}
