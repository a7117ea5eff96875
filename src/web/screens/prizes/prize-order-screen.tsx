import '../../styles/tasks.css';
import './prizes.css';
import { type PrizeOrderLine, prizes } from '../../../questions/prizes.ts';
import { unitsText } from '../../../statements/money-text.ts';
import { useBook } from '../../book.ts';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { type Column, Table } from '../../parts/table.tsx';

const COLUMNS: readonly Column<PrizeOrderLine>[] = [
  { head: 'Prize', cell: (row) => row.prize },
  { head: 'Choice', cell: (row) => row.choice ?? '' },
  { head: 'Pieces', number: true, cell: (row) => unitsText(row.pieces) },
];

/** What to order, by prize and choice, for confirmed credit alone. */
export function PrizeOrderScreen() {
  const { order, sellers, notShared } = prizes(useBook().ledger);
  const missing = sellers.reduce((sum, seller) => sum + seller.missing.length, 0);
  const unsure = sellers.filter(({ pending }) => pending.stallNotSettled > 0).length;
  const pieces = order.reduce((sum, line) => sum + line.pieces, 0);
  const waiting = [
    missing > 0 ? `${missing} ${missing === 1 ? 'choice' : 'choices'} missing` : '',
    unsure > 0 ? `credit of ${unsure} sellers not confirmed` : '',
    Object.keys(notShared).length > 0 ? 'a pool not yet shared' : '',
  ].filter((words) => words !== '');
  return (
    <Page
      title="Prizes to order"
      above={<a href="/prizes">Prizes</a>}
      lead={
        waiting.length === 0 ? (
          <StateMark mark="done" word="Nothing is waiting: this is the whole order." />
        ) : (
          <>
            <StateMark mark="open" word="Not whole yet:" /> {waiting.join(', ')}.
          </>
        )
      }
      actions={<PaperLinks paper="prize-order" words="Order" print />}
    >
      <Table
        caption="By prize and choice"
        hideCaption
        rows={order}
        keyOf={(row) => `${row.level} ${row.choice ?? ''}`}
        columns={COLUMNS}
        none="No prize to order yet."
        foot={['Together', '', unitsText(pieces)]}
      />
      <p class="soft">
        Only confirmed credit is in it. Prizes that families do without are left out.
      </p>
    </Page>
  );
}
