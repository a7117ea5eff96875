import { type OrderedLine, orderedAgainstTaken } from '../../../questions/ordered-against-taken.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Money, Units } from '../../parts/figures.tsx';
import { Sentence } from '../../parts/sentence.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';

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
    { head: say`Product`, cell: (line) => productName(ledger.setup, line.product) },
    number(say`Ordered`, (line) => line.ordered),
    ...(hasOnline ? [number(say`Online, to bring`, (line) => line.online)] : []),
    number(say`Taken over`, (line) => line.taken),
    number(say`Still to hand over`, (line) => line.toHandOver),
    ...(hasGifts
      ? [
          number(say`Gift units ordered`, (line) => line.giftsOrdered),
          number(say`Gift units recorded`, (line) => line.giftsRecorded),
        ]
      : []),
  ];
  return (
    <section aria-labelledby="ordered" class="no-print">
      <h2 id="ordered">{say`Ordered against taken`}</h2>
      {rows.length > 0 && (
        <p>
          <ToDo toHandOver={answer.toHandOver} gifts={answer.giftsToRecord} />
          {answer.paidWithForms > 0 && (
            <> {say.pieces`Handed in with the forms: ${<Money minor={answer.paidWithForms} />}.`}</>
          )}
        </p>
      )}
      <Table
        caption={say`Ordered against taken, in units`}
        hideCaption
        rows={rows}
        keyOf={(line) => line.product}
        columns={columns}
        none={say`No order form and no online order yet.`}
      />
      {rows.length > 0 && (
        <details>
          <summary>{say.count(
            answer.records.length,
          )`The # record behind it|The # records behind it`}</summary>
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

/** What is still to be done about the orders, in units. */
function ToDo(props: { readonly toHandOver: number; readonly gifts: number }) {
  const { toHandOver, gifts } = props;
  return (
    <>
      <Units
        units={toHandOver}
        words={say.count(toHandOver)`# unit still to hand over|# units still to hand over`}
      />
      {gifts > 0 && (
        <>
          ,{' '}
          <Units
            units={gifts}
            words={say.count(gifts)`# gift unit still to record|# gift units still to record`}
          />
        </>
      )}
      .
    </>
  );
}
