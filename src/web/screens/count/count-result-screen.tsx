import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import '../../styles/tasks.css';
import type { Setup } from '../../../ledger/setup.ts';
import {
  type CountDifference,
  type CountedProduct,
  countDifference,
} from '../../../questions/count-difference.ts';
import type { RecordOf } from '../../../records/record.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { DifferenceStrip } from '../../parts/difference-strip.tsx';
import { Difference, Units } from '../../parts/figures.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { Sentence } from '../../parts/sentence.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import type { ScreenProps } from '../../routes.ts';
import { whyCount } from '../../why-address.ts';
import { CountOutcome } from './count-outcome.tsx';

/** A saved count against the book, product by product, and what to do about each. */
export function CountResultScreen({ params }: ScreenProps) {
  const { ledger } = useBook();
  const count = ledger.standing.currentOf(params.count ?? '');
  if (count?.kind !== 'count') {
    return (
      <Page title={say`Count`} above={<a href="/count">{say`Count`}</a>}>
        <p>
          {say.pieces`This count is not in the book any more. ${link('/count', say`Count again`)}.`}
        </p>
      </Page>
    );
  }
  return <CountResult count={count} />;
}

function CountResult({ count }: { readonly count: RecordOf<'count'> }) {
  const { ledger } = useBook();
  const answer = countDifference(ledger, count);
  return (
    <Page
      title={say`Count of ${say.day(count.date)}`}
      above={<a href="/count">{say`Count`}</a>}
      lead={
        <>
          {count.counters === undefined
            ? say`Counted by one person`
            : say`Counted by ${say.list(count.counters)}`}{' '}
          · <CountOutcome difference={answer} />
        </>
      }
      actions={
        <>
          {!answer.agrees && (
            <a class="button button-plain" href={whyCount(count.id)}>
              {say`Why?`}
            </a>
          )}
          <a class="button button-plain" href="/count">
            {say`Count again`}
          </a>
        </>
      }
    >
      {answer.movedAfter.length > 0 && (
        <Notice title={say`Goods were recorded on the same day after this count.`}>
          <p>{say`Check which side of the count they belong to; if they came after it, count
            again.`}</p>
          <ul>
            {answer.movedAfter.map((id) => (
              <li key={id}>
                <Sentence record={ledger.standing.get(id)} />
              </li>
            ))}
          </ul>
        </Notice>
      )}
      <div class="stack stack-things with-strip">
        <Table
          caption={say`Counted against the book, in units`}
          rows={answer.products}
          keyOf={(product) => product.product}
          columns={columnsOf(ledger.setup, count.date, answer)}
        />
      </div>
      <p class="soft">
        {say`One product is never set off against another: 2 short of one and 2 over of another are
          4 units to explain.`}
      </p>
      <p>{say.pieces`${link(`/records/${count.id}`, say`Open the record`)} to edit or undo it.`}</p>
    </Page>
  );
}

function columnsOf(
  setup: Setup,
  date: string,
  { most }: CountDifference,
): readonly Column<CountedProduct>[] {
  return [
    { head: say`Product`, cell: ({ product }) => productName(setup, product) },
    {
      head: say`Counted`,
      number: true,
      cell: ({ counted }) =>
        counted === undefined ? (
          <span class="soft">{say`not counted`}</span>
        ) : (
          <>
            <span class="only-narrow">{say`counted`} </span>
            <Units units={counted} plain />
          </>
        ),
    },
    {
      head: say`By the book`,
      number: true,
      cell: ({ book }) => (
        <>
          <span class="only-narrow">{say`by the book`} </span>
          <Units units={book} plain />
        </>
      ),
    },
    {
      head: say`Difference`,
      number: true,
      cell: (product) => <DifferenceCell product={product} most={most} />,
    },
    { head: say`What to do`, cell: (product) => <NextSteps product={product} date={date} /> },
  ];
}

/** The difference in words, and on a strip around the zero that all products share. */
function DifferenceCell(props: { readonly product: CountedProduct; readonly most: number }) {
  const { state, difference } = props.product;
  if (state === 'not-counted') return null;
  return (
    <>
      <Difference amount={difference} of="units" />
      {props.most > 0 && <DifferenceStrip difference={difference} of={props.most} />}
    </>
  );
}

function NextSteps(props: { readonly product: CountedProduct; readonly date: string }) {
  const { product, state } = props.product;
  const records = `/find?place=stockroom&product=${product}`;
  if (state === 'agrees') return <span class="soft">{say`nothing to do`}</span>;
  if (state === 'not-counted') return <a href="/count">{say`Count it`}</a>;
  const kind = state === 'short' ? 'loss' : 'found';
  return (
    <span class="steps">
      <a href="/count">{say`Count again`}</a>
      <a href={records}>{say`Look at its records`}</a>
      <a href={differenceForm(kind, props.product, props.date)}>
        {kind === 'loss' ? say`Write off, with a reason` : say`Record as found, with a reason`}
      </a>
    </span>
  );
}

/** The form filled with what differs; the reason is left for the person who knows it. */
function differenceForm(kind: 'loss' | 'found', counted: CountedProduct, date: string): string {
  const units = Math.abs(counted.difference);
  const filled = new URLSearchParams({
    date,
    [`lines.${counted.product}`]: String(units),
    note:
      kind === 'loss'
        ? say`Stockroom count of ${say.day(date)}: ${units} short`
        : say`Stockroom count of ${say.day(date)}: ${units} over`,
  });
  return `/add/${kind}?${filled}`;
}
