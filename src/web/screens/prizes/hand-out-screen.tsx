import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './prizes.css';
import { done } from '../../../base/outcome.ts';
import type { Ledger } from '../../../ledger/ledger.ts';
import { type HandOutPrize, handOutList } from '../../../questions/hand-out-list.ts';
import { prizes } from '../../../questions/prizes.ts';
import { type Draft, useBook } from '../../book.ts';
import { ErrorSummary } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import { type Saving, useSaving } from '../../parts/saving.ts';
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
const TO_WHOM: Column<Row> = {
  head: say`Day, and to whom`,
  wide: true,
  cell: (row) =>
    row.handed === undefined ? <span class="hand-out-line" /> : <>{say.day(row.handed)}</>,
};

/** Prizes to hand out weeks later, ticked here or on paper: first names and initials, in order. */
export function HandOutScreen() {
  const { ledger } = useBook();
  const saving = useSaving();
  const list = handOutList(ledger, prizes(ledger).sellers);
  const rows = list.flatMap(({ seller, name, prizes: own }) =>
    own.map((prize) => ({ ...prize, seller, name })),
  );
  const sure = rows.filter((row) => !row.notReached);
  const sellers = new Set(sure.map((row) => row.seller)).size;
  const out = sure.filter((row) => row.handed !== undefined).length;
  return (
    <Page
      title={say`Hand-out list`}
      above={<a href="/prizes">{say`Prizes`}</a>}
      lead={say`Prizes: ${sure.length}. Sellers: ${sellers}. Handed out: ${out}.`}
      actions={<PaperLinks paper="hand-out-list" words={say`List`} print />}
    >
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <p>
        {say`Tick here, or print it and tick on paper. A leader hands prizes to an adult of the
          family; keep the list with the season’s papers, and off notice boards.`}
      </p>
      <Table
        caption={say`Prizes by seller`}
        hideCaption
        rows={sure}
        keyOf={(row) => `${row.seller} ${row.level}`}
        columns={[NAME, PRIZE, ticked(saving), TO_WHOM]}
        none={say`No prize to hand out yet.`}
      />
      <ToDecide rows={rows.filter((row) => row.notReached)} />
    </Page>
  );
}

function ticked(saving: Saving): Column<Row> {
  return { head: say`Handed out`, cell: (row) => <Tick row={row} saving={saving} /> };
}

function Tick({ row, saving }: { readonly row: Row; readonly saving: Saving }) {
  const book = useBook();
  return (
    <input
      type="checkbox"
      class="hand-out-box"
      aria-label={say`Handed out: ${row.prize}, ${row.name}`}
      checked={row.handed !== undefined}
      disabled={saving.busy || row.choiceMissing}
      onChange={() => void saving.save(done([tick(book.ledger, row, book.workingDay())]))}
    />
  );
}

/** The choice as it stands, with the day it was handed out, or without it again. */
function tick(ledger: Ledger, { seller, level, prize, handed }: Row, today: string): Draft {
  const known = ledger.setup.choices.get(`${seller} ${level}`);
  return {
    kind: 'choice',
    seller,
    level,
    choice: known?.choice ?? prize,
    ...(handed === undefined ? { handed: today } : {}),
    ...(known === undefined ? {} : { replaces: known.id }),
  };
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
