import '../../styles/tasks.css';
import '../set-up/set-up.css';
import { byText } from '../../../base/order.ts';
import { done } from '../../../base/outcome.ts';
import { type PrizeOrderLine, prizes, type SellerPrizes } from '../../../questions/prizes.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { PrintButton } from '../../parts/button.tsx';
import { ClosedNotice, useClosed } from '../../parts/closed-season.tsx';
import { Units } from '../../parts/figures.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { useSaving } from '../../parts/saving.ts';
import { StateMark } from '../../parts/state-mark.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { StepChoices } from './step-choices.tsx';

/** Steps that each seller's credit has reached, in alphabetical order; no ranking of children. */
export function PrizesScreen() {
  const { ledger } = useBook();
  const closed = useClosed() !== undefined;
  const saving = useSaving();
  const answer = prizes(ledger);
  const name = (seller: string) => sellerName(ledger.setup, seller);
  const sellers = [...answer.sellers].sort(
    (a, b) => byText(name(a.seller), name(b.seller)) || byText(a.seller, b.seller),
  );
  const missing = sellers.reduce((sum, seller) => sum + seller.missing.length, 0);
  const choose = (seller: string, level: string, choice: string) => {
    const earlier = ledger.setup.choices.get(`${seller} ${level}`);
    const replaces = earlier === undefined ? {} : { replaces: earlier.id };
    void saving.save(done([{ kind: 'choice' as const, seller, level, choice, ...replaces }]));
  };
  const columns: readonly Column<SellerPrizes>[] = [
    {
      head: 'Seller',
      cell: (row) => <a href={`/accounts/credit/seller:${row.seller}`}>{name(row.seller)}</a>,
    },
    { head: 'Credited', number: true, cell: (row) => <Units units={row.credited} plain /> },
    {
      head: 'Steps reached, and choices',
      cell: (row) => (
        <StepChoices
          prizes={row}
          readOnly={closed}
          onChoose={(level, choice) => choose(row.seller, level, choice)}
        />
      ),
    },
  ];
  const orderColumns: readonly Column<PrizeOrderLine>[] = [
    { head: 'Prize', cell: (row) => row.prize },
    { head: 'Choice', cell: (row) => row.choice ?? '' },
    { head: 'Pieces', number: true, cell: (row) => row.pieces },
  ];
  return (
    <Page
      title="Prizes"
      above={<a href="/set-up">Set-up</a>}
      lead={
        missing === 0 ? (
          <StateMark mark="done" word="0 choices missing" />
        ) : (
          <StateMark mark="open" word={`${missing} choices missing`} />
        )
      }
      actions={
        <>
          <PrintButton />
          <a class="button button-plain" href="/set-up/prize-steps">
            Prize steps
          </a>
        </>
      }
    >
      <ClosedNotice />
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <Table
        caption="Sellers in alphabetical order"
        rows={sellers}
        keyOf={(row) => row.seller}
        columns={columns}
        none={
          <>
            No seller yet. <a href="/set-up/paste">Paste a seller list</a>, or{' '}
            <a href="/set-up/sellers">add a seller</a>.
          </>
        }
      />
      <p class="soft">Credit counts towards prizes only; it is never money.</p>
      <Table
        caption="Prizes to order"
        rows={answer.order}
        keyOf={(row) => `${row.level} ${row.choice ?? ''}`}
        columns={orderColumns}
        none="No prize to order yet."
      />
    </Page>
  );
}
