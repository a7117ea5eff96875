import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import '../../styles/tasks.css';
import '../set-up/set-up.css';
import './prizes.css';
import { byName } from '../../../base/name-order.ts';
import { byText } from '../../../base/order.ts';
import { done } from '../../../base/outcome.ts';
import type { Ledger } from '../../../ledger/ledger.ts';
import { prizes, type SellerPrizes } from '../../../questions/prizes.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { type Draft, useBook } from '../../book.ts';
import { PrintButton } from '../../parts/button.tsx';
import { ClosedNotice, useClosed } from '../../parts/closed-season.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { type Saving, useSaving } from '../../parts/saving.ts';
import { StateMark } from '../../parts/state-mark.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { PrizeProceeds } from './prize-proceeds.tsx';
import { StepChoices } from './step-choices.tsx';

/** Steps that each seller's credit has reached, in alphabetical order; no ranking of children. */
export function PrizesScreen() {
  const { ledger } = useBook();
  const saving = useSaving();
  const answer = prizes(ledger);
  const missing = answer.sellers.reduce((sum, seller) => sum + seller.missing.length, 0);
  return (
    <Page
      title={say`Prizes`}
      above={<a href="/set-up">{say`Set-up`}</a>}
      lead={
        missing === 0 ? (
          <StateMark mark="done" word={say.count(0)`# choice missing|# choices missing`} />
        ) : (
          <StateMark mark="open" word={say.count(missing)`# choice missing|# choices missing`} />
        )
      }
      actions={<Actions />}
    >
      <ClosedNotice />
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <NotShared pools={answer.notShared} />
      <SellersTable sellers={answer.sellers} saving={saving} />
      <PrizeProceeds />
      <p class="soft">
        {say`Credit counts towards prizes only; it is never money. Ask your adviser first about
          prizes of cash or gift cards, and about tax on prizes of some value.`}
      </p>
    </Page>
  );
}

function Actions() {
  return (
    <>
      <PrintButton />
      <a class="button button-plain" href="/prizes/order">
        {say`Order`}
      </a>
      <a class="button button-plain" href="/prizes/hand-out">
        {say`Hand-out list`}
      </a>
      <a class="button button-plain" href="/set-up/prize-steps">
        {say`Prize steps`}
      </a>
    </>
  );
}

function SellersTable(props: {
  readonly sellers: readonly SellerPrizes[];
  readonly saving: Saving;
}) {
  const { ledger } = useBook();
  const closed = useClosed() !== undefined;
  const name = (row: SellerPrizes) => sellerName(ledger.setup, row.seller);
  const columns: readonly Column<SellerPrizes>[] = [
    { head: say`Seller`, cell: (row) => <Credited row={row} name={name(row)} /> },
    {
      head: say`Steps reached, and choices`,
      cell: (row) => (
        <StepChoices
          prizes={row}
          readOnly={closed}
          onChoose={(level, choice) => {
            const drafts = choiceDrafts(ledger, row.seller, level, choice);
            void props.saving.save(done(drafts));
          }}
        />
      ),
    },
  ];
  return (
    <Table
      caption={say`Sellers in alphabetical order`}
      rows={[...props.sellers].sort(
        (a, b) => byName(name(a), name(b)) || byText(a.seller, b.seller),
      )}
      keyOf={(row) => row.seller}
      columns={columns}
      none={say`No seller yet.`}
    />
  );
}

/** A choice in place of an earlier one; an empty choice takes "no prize" back. */
function choiceDrafts(ledger: Ledger, seller: string, level: string, choice: string): Draft[] {
  const earlier = ledger.setup.choices.get(`${seller} ${level}`);
  if (choice !== '') {
    const replaces = earlier === undefined ? {} : { replaces: earlier.id };
    return [{ kind: 'choice', seller, level, choice, ...replaces }];
  }
  if (earlier === undefined) return [];
  return [{ kind: 'void', voids: earlier.id, reason: say`The prize is wanted` }];
}

/** A seller's units, what of them is not sure yet, and how many the next step wants. */
function Credited({ row, name }: { readonly row: SellerPrizes; readonly name: string }) {
  const { stallNotSettled, toBring } = row.pending;
  return (
    <>
      <a href={`/accounts/credit/seller:${row.seller}`}>{name}</a>
      <span class="prize-units">{say`${say.units(row.credited)} units`}</span>
      {stallNotSettled > 0 && (
        <span class="prize-units">
          {say`${say.units(stallNotSettled)} of them not confirmed: the stall is not settled`}
        </span>
      )}
      {toBring > 0 && (
        <span class="prize-units">
          {say`${say.units(toBring)} more to come with online orders to be brought`}
        </span>
      )}
    </>
  );
}

/** Credit that is still in pools: steps may change once it is shared. */
function NotShared({ pools }: { readonly pools: Readonly<Record<string, number>> }) {
  const units = Object.values(pools).reduce((sum, each) => sum + Math.max(0, each), 0);
  if (units === 0) return null;
  return (
    <p>
      <StateMark mark="open" word={say`${say.units(units)} units`} />{' '}
      {say.pieces`not yet shared. Share them out first: steps may change.
        ${link('/closing', say`Closing list`)}`}
    </p>
  );
}
