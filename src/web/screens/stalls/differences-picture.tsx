import {
  type StallDifference,
  type StallDifferences,
  stallDifferences,
} from '../../../questions/stall-differences.ts';
import { hostName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { DifferenceStrip } from '../../parts/difference-strip.tsx';
import { Difference } from '../../parts/figures.tsx';
import { Picture } from '../../parts/picture.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';

/** What the money of the settled stalls differed by, each on a strip around the same zero. */
export function DifferencesPicture() {
  const book = useBook();
  const answer = stallDifferences(book.ledger, book.workingDay());
  if (answer.stalls.length === 0) return null;
  return (
    <section aria-labelledby="differences">
      <h2 id="differences">{say`Differences of settled stalls`}</h2>
      <Picture name={inWords(answer, book.currency)}>
        <div class="stack with-strip strip-below">
          <Strips answer={answer} />
        </div>
      </Picture>
    </section>
  );
}

function inWords(answer: StallDifferences, currency: string): string {
  const { stalls, agreeing } = answer;
  const short = say.money(answer.short, currency);
  const over = say.money(answer.over, currency);
  return say`${short} short and ${over} over; ${agreeing} of ${stalls.length} agree.`;
}

/** The strips stand in the table that holds their figures. */
function Strips({ answer }: { readonly answer: StallDifferences }) {
  const { setup } = useBook().ledger;
  const columns: readonly Column<StallDifference>[] = [
    { head: say`Stall`, cell: ({ host, date }) => `${hostName(setup, host)}, ${say.day(date)}` },
    {
      head: say`Short, zero, over`,
      cell: ({ difference }) => <DifferenceStrip difference={difference} of={answer.most} />,
    },
    {
      head: say`Difference`,
      number: true,
      cell: ({ difference, record }) => (
        <Difference amount={difference} of="money" to={`/records/${record}`} />
      ),
    },
  ];
  return (
    <Table
      caption={say`Stalls`}
      hideCaption
      rows={answer.stalls}
      keyOf={({ record }) => record}
      columns={columns}
    />
  );
}
