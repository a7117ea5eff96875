import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './prizes.css';
import { type HandOutPrize, handOutList } from '../../../questions/hand-out-list.ts';
import { prizes } from '../../../questions/prizes.ts';
import { useBook } from '../../book.ts';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import { type Column, Table } from '../../parts/table.tsx';

interface Row extends HandOutPrize {
  readonly seller: string;
  readonly name: string;
}

const NAME: Column<Row> = { head: say`Seller`, cell: (row) => row.name };
const PRIZE: Column<Row> = {
  head: say`Prize`,
  cell: (row) => (
    <>
      {row.prize}
      {row.choice !== undefined && `, ${row.choice}`}
      {row.choiceMissing && <b class="figure-difference"> {say`▲ choice missing`}</b>}
    </>
  ),
};
const TICKED: readonly Column<Row>[] = [
  NAME,
  PRIZE,
  {
    head: say`Handed out`,
    cell: () => <span class="hand-out-box" role="img" aria-label={say`Tick on paper`} />,
  },
  { head: say`Day, and to whom`, wide: true, cell: () => <span class="hand-out-line" /> },
];

/** Prizes to hand out weeks later, ticked on paper: first names and initials, in their order. */
export function HandOutScreen() {
  const { ledger } = useBook();
  const list = handOutList(ledger, prizes(ledger).sellers);
  const rows = list.flatMap(({ seller, name, prizes: own }) =>
    own.map((prize) => ({ ...prize, seller, name })),
  );
  const sure = rows.filter((row) => !row.notReached);
  const sellers = new Set(sure.map((row) => row.seller)).size;
  return (
    <Page
      title={say`Hand-out list`}
      above={<a href="/prizes">{say`Prizes`}</a>}
      lead={say`Prizes: ${sure.length}. Sellers: ${sellers}.`}
      actions={<PaperLinks paper="hand-out-list" words={say`List`} print />}
    >
      <p>
        {say`Print it and tick on paper. A leader hands prizes to an adult of the family; keep the
          list with the season’s papers, and off notice boards.`}
      </p>
      <Table
        caption={say`Prizes by seller`}
        hideCaption
        rows={sure}
        keyOf={(row) => `${row.seller} ${row.level}`}
        columns={TICKED}
        none={say`No prize to hand out yet.`}
      />
      <ToDecide rows={rows.filter((row) => row.notReached)} />
    </Page>
  );
}

function ToDecide({ rows }: { readonly rows: readonly Row[] }) {
  if (rows.length === 0) return null;
  return (
    <section aria-labelledby="decide">
      <h2 id="decide">{say`For a leader to decide`}</h2>
      <p>{say`Chosen, but the credit is not there: not yet, or no more. What is ordered stays.`}</p>
      <Table
        caption={say`Chosen, credit not there`}
        hideCaption
        rows={rows}
        keyOf={(row) => `${row.seller} ${row.level}`}
        columns={[NAME, PRIZE]}
      />
    </section>
  );
}
