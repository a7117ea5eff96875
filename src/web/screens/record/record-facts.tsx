import { isDay } from '../../../base/day.ts';
import type { BookRecord, RecordOf } from '../../../records/record.ts';
import { hostName, productName, sellerName, stallName } from '../../../statements/account-name.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { type Book, useBook } from '../../book.ts';
import { say } from '../../say.ts';
import type { FieldForm } from '../form/field-form.ts';
import { fieldsOf } from '../form/form-values.ts';
import { WrittenBy } from './written-by.tsx';

/** Every field of a record in words, those that no form knows among them. */
export function RecordFacts({ record }: { readonly record: BookRecord }) {
  const book = useBook();
  const forms = record.kind === 'void' ? [] : fieldsOf(record.kind, book.ledger);
  const facts = Object.entries(record).flatMap(([field, value]) => {
    if (STAMPS.has(field) || value === undefined) return [];
    // What a phone handed in from a stall is shown as that stall's sheet.
    if (isSheet(record) && (field === 'sheet' || field === 'lines')) return [];
    const form = forms.find((known) => known.field === field);
    const place = form === undefined ? forms.length : forms.indexOf(form);
    return [{ field, label: form?.label ?? LABELS[field] ?? field, form, value, place }];
  });
  // In the order of the form; a book file may have its fields in any.
  facts.sort((a, b) => a.place - b.place);
  return (
    <section aria-labelledby="facts-head">
      <h2 class="column-head" id="facts-head">
        {say`What it says`}
      </h2>
      <dl class="facts">
        {facts.map(({ field, label, form, value }) => (
          <div key={field}>
            <dt>{label}</dt>
            <dd>
              <Value value={value} form={form} book={book} />
            </dd>
          </div>
        ))}
        {isSheet(record) && <SheetFact stall={record.sheet.stall} />}
        <div>
          <dt>{say`Written`}</dt>
          <dd>
            <WrittenBy record={record} />
          </dd>
        </div>
      </dl>
    </section>
  );
}

function SheetFact({ stall }: { readonly stall: string }) {
  return (
    <div>
      <dt>{say`Stall sheet`}</dt>
      <dd>
        <a href={`/stalls/${stall}/sheet`}>{stallName(useBook().ledger.setup, stall, say)}</a>
      </dd>
    </div>
  );
}

type Sheet = RecordOf<'count'> & Required<Pick<RecordOf<'count'>, 'sheet'>>;

/** True for the lines of a stall's sheet that a phone handed in: they are edited there. */
export function isSheet(record: BookRecord): record is Sheet {
  return record.kind === 'count' && record.sheet !== undefined;
}

const STAMPS = new Set(['id', 'at', 'by', 'kind', 'replaces']);
const LABELS: Readonly<Record<string, string>> = {
  date: say`Day`,
  note: say`Note`,
  late: say`Recorded late because`,
  voids: say`Removes`,
  reason: say`Reason`,
  items: say`Payments in it`,
  closed: say`Closed`,
  waiver: say`More per unit without prizes`,
};

function Value(props: {
  readonly value: unknown;
  readonly form: FieldForm | undefined;
  readonly book: Book;
}) {
  const { value, form, book } = props;
  const { ledger } = book;
  if (typeof value === 'boolean') return <>{value ? say`yes` : say`no`}</>;
  if (typeof value === 'number') {
    return <>{form?.type === 'money' ? say.money(value, book.currency) : say.units(value)}</>;
  }
  if (typeof value === 'string') return <>{textValue(value, form, book)}</>;
  if (form?.type === 'lines') return <Goods lines={Object.entries(value ?? {})} book={book} />;
  if (form?.type === 'tally') {
    return (
      <ul>
        {Object.entries(value ?? {}).map(([minor, pieces]) => (
          <li key={minor}>
            {String(pieces)} × {say.money(Number(minor), book.currency)}
          </li>
        ))}
      </ul>
    );
  }
  if (form?.type === 'shares') {
    return (
      <ul>
        {Object.entries(value ?? {}).map(([seller, lines]) => (
          <li key={seller}>
            {sellerName(ledger.setup, seller)}: {goodsText(Object.entries(lines ?? {}), book)}
          </li>
        ))}
      </ul>
    );
  }
  if (Array.isArray(value)) return <Listed items={value} form={form} book={book} />;
  return <>{rowText(value, form, book)}</>;
}

function Listed(props: {
  readonly items: readonly unknown[];
  readonly form: FieldForm | undefined;
  readonly book: Book;
}) {
  if (props.items.length === 0) return <>{say`none`}</>;
  return (
    <ul>
      {props.items.map((item) => (
        <li key={JSON.stringify(item)}>
          {typeof item === 'string' ? (
            <ItemText text={item} book={props.book} />
          ) : (
            rowText(item, props.form, props.book)
          )}
        </li>
      ))}
    </ul>
  );
}

/** An id of another record opens it; any other text is itself. */
function ItemText({ text, book }: { readonly text: string; readonly book: Book }) {
  const other = book.ledger.standing.get(text);
  if (other === undefined) return <>{text}</>;
  return <a href={`/records/${text}`}>{recordSentence(other, book.ledger, say)}</a>;
}

function Goods(props: { readonly lines: readonly [string, unknown][]; readonly book: Book }) {
  if (props.lines.length === 0) return <>{say`none`}</>;
  return (
    <ul class="goods-lines">
      {props.lines.map(([product, units]) => (
        <li key={product}>
          <span>{productName(props.book.ledger.setup, product)}</span>
          <span class="number">{say.units(Number(units))}</span>
        </li>
      ))}
    </ul>
  );
}

function goodsText(lines: readonly [string, unknown][], book: Book): string {
  const { setup } = book.ledger;
  return lines
    .map(([product, units]) => say.as('goods')`${Number(units)} ${productName(setup, product)}`)
    .join(say`, `);
}

function rowText(row: unknown, form: FieldForm | undefined, book: Book): string {
  return Object.entries(row ?? {})
    .map(([field, value]) => {
      const column =
        form?.type === 'rows' ? form.columns.find((known) => known.field === field) : undefined;
      if (column?.as === 'seller') return sellerName(book.ledger.setup, String(value));
      if (column?.as === 'product') return productName(book.ledger.setup, String(value));
      if (column?.as === 'day') return say.day(String(value));
      const money = column?.as === 'money' || field === 'cents';
      if (money && typeof value === 'number') return say.money(value, book.currency);
      return String(value).replace(/^\d{4}-\d\d-\d\dT/, '');
    })
    .join(say`, `);
}

function textValue(value: string, form: FieldForm | undefined, book: Book) {
  const { setup, standing } = book.ledger;
  if (form?.type === 'seller') return sellerName(setup, value);
  if (form?.type === 'choice') {
    return form.options.find(([option]) => option === value)?.[1] ?? value;
  }
  if (form?.type === 'moment') {
    const [day = '', clock = ''] = value.split('T');
    return `${say.day(day)}, ${clock}`;
  }
  if (form?.type === 'thing') {
    if (form.of === 'stall') return <a href={`/stalls/${value}`}>{stallName(setup, value, say)}</a>;
    if (form.of === 'host') return hostName(setup, value);
    if (form.of === 'product') return productName(setup, value);
    if (form.of === 'level') return setup.levels.get(value)?.prize ?? value;
    if (form.of === 'neighbour') return setup.neighbours.get(value)?.name ?? value;
    return <a href={`/families/${value}`}>{setup.families.get(value)?.name ?? value}</a>;
  }
  const other = standing.get(value);
  if (other !== undefined) {
    return <a href={`/records/${value}`}>{recordSentence(other, book.ledger, say)}</a>;
  }
  return isDay(value) ? say.day(value) : value;
}
