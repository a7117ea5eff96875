import { say } from '../../say.ts';
import './board.css';
import type { LedgerName } from '../../../questions/postings-of.ts';
import { accountName, productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Page } from '../../parts/page.tsx';
import type { ScreenProps } from '../../routes.ts';
import { seenPlaceOf, whyAddress } from '../../why-address.ts';
import { AccountRoll } from './account-roll.tsx';
import { ByProduct } from './by-product.tsx';

/**
 * Any account of any ledger as a running list: where every number opens to. Addresses are
 * `/accounts/stock/stockroom?product=honey`, `/accounts/money/owed:ada`,
 * `/accounts/credit/seller:ada`.
 */
export function AccountScreen({ params, search }: ScreenProps) {
  const { ledger } = useBook();
  const name = ledgerNames.find((known) => known === params.ledger) ?? 'money';
  const account = params.account ?? '';
  const product = search.get('product') ?? undefined;
  const title = accountName(ledger, name, account, say);
  const seen = seenPlaceOf(name, account);
  return (
    <Page
      title={product === undefined ? title : `${productName(ledger.setup, product)}: ${title}`}
      above={<a href="/">{say`Places`}</a>}
      layout="account"
    >
      <section class="roll" aria-label={say`Running list`}>
        {seen !== undefined && (
          <p class="roll-more">
            <a href={whyAddress([seen])}>{say`It does not agree: why?`}</a>
          </p>
        )}
        {name !== 'money' && product === undefined && (
          <ByProduct
            account={account}
            ledgerName={name}
            lines={ledger.balances.linesOf(name, account)}
          />
        )}
        <AccountRoll
          following={{ ledger: name, accounts: (other) => other === account, product }}
          account={account}
        />
      </section>
    </Page>
  );
}

const ledgerNames: readonly LedgerName[] = ['stock', 'money', 'credit'];
