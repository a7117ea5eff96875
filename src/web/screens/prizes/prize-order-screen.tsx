import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './prizes.css';
import { type PrizeOrderLine, type Prizes, prizes } from '../../../questions/prizes.ts';
import { useBook } from '../../book.ts';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { type Column, Table } from '../../parts/table.tsx';

const COLUMNS: readonly Column<PrizeOrderLine>[] = [
  { head: say`Prize`, cell: (row) => row.prize },
  { head: say`Choice`, cell: (row) => row.choice ?? '' },
  { head: say`Pieces`, number: true, cell: (row) => say.units(row.pieces) },
];

/** What to order, by prize and choice, for confirmed credit alone. */
export function PrizeOrderScreen() {
  const answer = prizes(useBook().ledger);
  const { order } = answer;
  const pieces = order.reduce((sum, line) => sum + line.pieces, 0);
  return (
    <Page
      title={say`Prizes to order`}
      above={<a href="/prizes">{say`Prizes`}</a>}
      lead={<Waiting {...answer} />}
      actions={<PaperLinks paper="prize-order" words={say`Order`} print />}
    >
      <Table
        caption={say`By prize and choice`}
        hideCaption
        rows={order}
        keyOf={(row) => `${row.level} ${row.choice ?? ''}`}
        columns={COLUMNS}
        none={say`No prize to order yet.`}
        foot={[say`Together`, '', say.units(pieces)]}
      />
      <p class="soft">
        {say`Only confirmed credit is in it. Prizes that families do without are left out.`}
      </p>
    </Page>
  );
}

/** What the order still waits for. */
function Waiting({ sellers, notShared }: Prizes) {
  const missing = sellers.reduce((sum, seller) => sum + seller.missing.length, 0);
  const unsure = sellers.filter(({ pending }) => pending.stallNotSettled > 0).length;
  const waiting = [
    missing > 0 ? say.count(missing)`# choice missing|# choices missing` : '',
    unsure > 0
      ? say.count(unsure)`credit of # seller not confirmed|credit of # sellers not confirmed`
      : '',
    Object.keys(notShared).length > 0 ? say`a pool not yet shared` : '',
  ].filter((words) => words !== '');
  if (waiting.length === 0) {
    return <StateMark mark="done" word={say`Nothing is waiting: this is the whole order.`} />;
  }
  return (
    <>
      <StateMark mark="open" word={say`Not whole yet:`} /> {waiting.join(say`, `)}.
    </>
  );
}
