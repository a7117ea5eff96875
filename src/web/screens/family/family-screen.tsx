import { say } from '../../say.ts';
import '../../styles/tasks.css';
import { type FamilyAccount, familyAccount } from '../../../questions/family-account.ts';
import { sellersOf } from '../../../questions/ordered-against-taken.ts';
import { useBook } from '../../book.ts';
import { Owed } from '../../parts/owed.tsx';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import type { ScreenProps } from '../../routes.ts';
import { whyFamily } from '../../why-address.ts';
import { FamilyPayment } from './family-payment.tsx';
import { OrderedTable } from './ordered-table.tsx';
import { SellersTable } from './sellers-table.tsx';
import { SoldPicture } from './sold-picture.tsx';
import { Statement } from './statement.tsx';

/** One family: its statement, what it ordered against what it took, and one payment for all. */
export function FamilyScreen({ params }: ScreenProps) {
  const { ledger } = useBook();
  const family = params.family ?? '';
  const answer = familyAccount(ledger, family);
  if (!answer.ok) {
    const words =
      answer.refusal.name === 'sums_too_large'
        ? say`An amount in this book is too large to add up. Find and edit it first.`
        : say`There is no such family in this book.`;
    return (
      <Page title={say`Family`} above={<a href="/families">{say`Families`}</a>}>
        <p>{words}</p>
      </Page>
    );
  }
  return <Family account={answer.value} />;
}

function Family({ account }: { readonly account: FamilyAccount }) {
  const { ledger } = useBook();
  const sellers = sellersOf(ledger, account.family);
  const first = sellers[0];
  return (
    <Page
      title={account.name}
      above={<a href="/families">{say`Families`}</a>}
      lead={
        <>
          {account.sellers.map((seller) => seller.name).join(say`, `)} ·{' '}
          <Owed minor={account.stillToPay} />{' '}
          <a class="jump no-print" href="#payment">
            {say`Record a payment`}
          </a>{' '}
          <a class="jump no-print" href={whyFamily(ledger.setup, account.family)}>
            {say`The family says otherwise: why?`}
          </a>
        </>
      }
      actions={<PaperLinks paper="statement" about={account.family} words={say`Statement`} print />}
      layout="family-page"
    >
      <div class="two-columns">
        <section class="main-column" aria-labelledby="statement">
          <h2 id="statement">{say`Statement`}</h2>
          <Statement account={account} />
        </section>
        <div class="side-column no-print">
          <FamilyPayment key={account.family} account={account} />
          {first !== undefined && (
            <p class="button-row">
              <a class="button button-plain" href={`/add/handover?seller=${first}`}>
                {say`Goods out`}
              </a>
              <a class="button button-plain" href={`/add/return?seller=${first}`}>
                {say`Goods back`}
              </a>
              <a class="button button-plain" href={`/add/order?seller=${first}`}>
                {say`Family order`}
              </a>
            </p>
          )}
        </div>
      </div>
      <SellersTable account={account} />
      <SoldPicture family={account.family} />
      <OrderedTable sellers={sellers} />
    </Page>
  );
}
