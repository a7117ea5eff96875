import { type OrderedLine, orderedAgainstTaken } from '../../../questions/ordered-against-taken.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Money, Units } from '../../parts/figures.tsx';
import { Sentence } from '../../parts/sentence.tsx';
import { type Column, Table } from '../../parts/table.tsx';

/** What the family ordered, on forms and online, against what it has taken over. */
export function OrderedTable({ sellers }: { readonly sellers: readonly string[] }) {
  const { ledger } = useBook();
  const answer = orderedAgainstTaken(ledger, sellers);
  const rows = answer.lines.filter((line) => line.ordered + line.online + line.giftsOrdered > 0);
  const number = (head: string, units: (line: OrderedLine) => number): Column<OrderedLine> => ({
    head,
    number: true,
    cell: (line) => <Units units={units(line)} plain />,
  });
  const hasOnline = rows.some((line) => line.online > 0);
  const hasGifts = rows.some((line) => line.giftsOrdered + line.giftsRecorded > 0);
  const columns: readonly Column<OrderedLine>[] = [
    { head: 'Product', cell: (line) => productName(ledger.setup, line.product) },
    number('Ordered', (line) => line.ordered),
    ...(hasOnline ? [number('Online, to bring', (line) => line.online)] : []),
    number('Taken over', (line) => line.taken),
    number('Still to hand over', (line) => line.toHandOver),
    ...(hasGifts
      ? [
          number('Gift units ordered', (line) => line.giftsOrdered),
          number('Gift units recorded', (line) => line.giftsRecorded),
        ]
      : []),
  ];
  return (
    <section aria-labelledby="ordered" class="no-print">
      <h2 id="ordered">Ordered against taken</h2>
      {rows.length > 0 && (
        <p>
          <Units units={answer.toHandOver} /> still to hand over
          {answer.giftsToRecord > 0 && (
            <>
              {', '}
              <Units units={answer.giftsToRecord} word="gift units" /> still to record
            </>
          )}
          .
          {answer.paidWithForms > 0 && (
            <>
              {' '}
              Handed in with the forms: <Money minor={answer.paidWithForms} />.
            </>
          )}
        </p>
      )}
      <Table
        caption="Ordered against taken, in units"
        hideCaption
        rows={rows}
        keyOf={(line) => line.product}
        columns={columns}
        none="No order form and no online order yet."
      />
      {rows.length > 0 && (
        <details>
          <summary>The {answer.records.length} records behind it</summary>
          <ul class="record-list">
            {answer.records.map((id) => (
              <li key={id}>
                <Sentence record={ledger.standing.get(id)} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
