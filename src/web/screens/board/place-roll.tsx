import { accountsOf, type PlaceId } from '../../../questions/places.ts';
import { useBook } from '../../book.ts';
import { Later } from '../../parts/later.tsx';
import { say } from '../../say.ts';
import { whyAddress } from '../../why-address.ts';
import { AccountRoll } from './account-roll.tsx';
import { ByProduct } from './by-product.tsx';

/** The list of one place: its goods or its money, each line with what was there after it. */
export function PlaceRoll(props: { readonly place: PlaceId; readonly show: string | null }) {
  const { ledger } = useBook();
  const { stock, money } = accountsOf(props.place);
  const about = money !== undefined && (stock === undefined || props.show === 'money');
  const account = PLACE_ACCOUNTS[props.place];
  return (
    <section class="roll" aria-label={say`Running list`}>
      <h2 class="column-head">
        {say`Running list`}{' '}
        {stock !== undefined && money !== undefined && (
          <span class="roll-switch">
            <a href={`/places/${props.place}`} aria-current={about ? undefined : 'true'}>
              {say`goods`}
            </a>{' '}
            <a href={`/places/${props.place}?show=money`} aria-current={about ? 'true' : undefined}>
              {say`money`}
            </a>
          </span>
        )}
      </h2>
      {props.place === 'families' && (
        <p class="roll-more">
          <a href="/families">{say`Every family’s own account`}</a>
        </p>
      )}
      {props.place === 'stalls' && (
        <p class="roll-more">
          <a href="/stalls">{say`Every stall, settled and not yet settled`}</a>
        </p>
      )}
      {props.place === 'bank' && (
        <p class="roll-more">
          <a href="/match/bank">{say`Match with the bank’s statement`}</a>
        </p>
      )}
      {props.place === 'supplier' && (
        <p class="roll-more">
          <a href="/match/supplier">{say`Match with the supplier’s statement`}</a>
        </p>
      )}
      {WHY_PLACES.has(props.place) && (
        <p class="roll-more">
          <a href={whyAddress([props.place])}>{say`It does not agree: why?`}</a>
        </p>
      )}
      {!about && account !== undefined && (
        <ByProduct account={account} lines={ledger.balances.linesOf('stock', account)} />
      )}
      {props.place === 'stockroom' && !about && <Later load={stockPicture} />}
      {props.place === 'bank' && <Later load={moneyPicture} />}
      <AccountRoll
        following={
          about
            ? { ledger: 'money', accounts: money ?? (() => false) }
            : { ledger: 'stock', accounts: stock ?? (() => false) }
        }
        account={about ? (MONEY_ACCOUNTS[props.place] ?? props.place) : (account ?? '')}
      />
    </section>
  );
}

const stockPicture = async () => (await import('../pictures/stock-picture.tsx')).StockPicture;
const moneyPicture = async () => (await import('../match/money-picture.tsx')).MoneyPicture;

/** Places whose figure somebody can see elsewhere: on a shelf, in a box, on a statement. */
const WHY_PLACES: ReadonlySet<PlaceId> = new Set([
  'stockroom',
  'cashbox',
  'cards',
  'bank',
  'supplier',
]);

/** Places that are one stock account, so that their goods can be told product by product. */
const PLACE_ACCOUNTS: Partial<Record<PlaceId, string>> = {
  stockroom: 'stockroom',
  stalls: 'stall-sold',
  given: 'gifted',
  lost: 'lost',
  supplier: 'supplier',
};

const MONEY_ACCOUNTS: Partial<Record<PlaceId, string>> = {
  stockroom: 'goods',
  families: 'owed:',
  stalls: 'overshort',
  lost: 'losses',
};
