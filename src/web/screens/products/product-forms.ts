import { freeId } from '../../../intake/short-id.ts';
import type { RecordOf } from '../../../records/record.ts';
import type { Book } from '../../book.ts';
import type { Checked } from '../../parts/saving.ts';
import { moneyToType } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import type { FieldSpec, Values } from '../set-up/fields-form.tsx';
import { Reading, replacing } from '../set-up/reading.ts';

interface ProductForm {
  readonly title: string;
  readonly fields: readonly FieldSpec[];
  readonly start: Values;
  readonly read: (values: Values) => Checked;
  readonly submit: string;
}

const PRICE: FieldSpec = { name: 'price', label: say`Price of one unit`, kind: 'money' };
const CASE: FieldSpec = { name: 'case', label: say`Units in a case`, kind: 'whole' };

const FIELDS: readonly FieldSpec[] = [
  { name: 'name', label: say`Name`, kind: 'text', hint: say`As it stands on the pack.` },
  PRICE,
  CASE,
  {
    name: 'storage',
    label: say`Where and how it is kept`,
    kind: 'text',
    optional: true,
    hint: say`Like Shelf B, top. Counting goes in the order of these.`,
  },
  { name: 'returnable', label: say`The supplier takes unsold units back`, kind: 'check' },
  { name: 'retired', label: say`Retired: not offered in forms any more`, kind: 'check' },
];

/** Adds a product, or edits the last record of one: its newest price among the rest. */
export function productForm(book: Book, product: RecordOf<'product'> | undefined): ProductForm {
  const { currency } = book;
  const taken = new Set(book.ledger.setup.products.keys());
  return {
    title: product === undefined ? say`Add a product` : say`Edit ${product.name}`,
    fields: FIELDS,
    start: {
      name: product?.name ?? '',
      price: product === undefined ? '' : moneyToType(product.price, currency),
      case: product === undefined ? '' : String(product.case),
      storage: product?.storage ?? '',
      returnable: product?.returnable ? 'yes' : '',
      retired: product?.retired ? 'yes' : '',
    },
    read: (values) => {
      const reading = new Reading(values, product);
      const name = reading.text('name', say`Write the name on the pack.`);
      return reading.done({
        ...kept(reading.optional('storage'), reading.ticked('returnable')),
        ...(reading.ticked('retired') ? { retired: true } : {}),
        kind: 'product',
        product: product?.product ?? freeId(name, 'product', taken),
        name,
        price: reading.money('price', currency),
        case: reading.whole('case', 1),
        ...replacing(product),
      });
    },
    submit: product === undefined ? say`Add the product` : say`Save the changes`,
  };
}

/** A new price (and case size) from a day on: a record of its own beside the earlier ones. */
export function priceForm(book: Book, product: RecordOf<'product'>): ProductForm {
  const { currency } = book;
  return {
    title: say`New price of ${product.name}`,
    fields: [
      PRICE,
      CASE,
      {
        name: 'from',
        label: say`From this day on`,
        kind: 'day',
        hint: say`On that day the stockroom’s units are valued at the new price.`,
      },
    ],
    start: { price: '', case: String(product.case), from: book.workingDay() },
    read: (values) => {
      const reading = new Reading(values);
      return reading.done({
        ...kept(product.storage ?? '', product.returnable === true),
        ...(product.retired ? { retired: true } : {}),
        kind: 'product',
        product: product.product,
        name: product.name,
        price: reading.money('price', currency),
        case: reading.whole('case', 1),
        from: reading.day('from'),
      });
    },
    submit: say`Save the new price`,
  };
}

function kept(storage: string, returnable: boolean) {
  return { ...(storage === '' ? {} : { storage }), ...(returnable ? { returnable } : {}) };
}
