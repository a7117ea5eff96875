import type { FamilyAccount, SellerAccount } from '../../../questions/family-account.ts';
import { useBook } from '../../book.ts';
import { LinesWords } from '../../parts/lines-words.tsx';
import { Owed } from '../../parts/owed.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';

/** Where a family has several sellers: what each holds and still has to pay. */
export function SellersTable({ account }: { readonly account: FamilyAccount }) {
  const { ledger } = useBook();
  if (account.sellers.length < 2) return null;
  const columns: readonly Column<SellerAccount>[] = [
    {
      head: say`Seller`,
      cell: (seller) => <a href={`/accounts/stock/seller:${seller.seller}`}>{seller.name}</a>,
    },
    { head: say`Taken and not brought back`, cell: (seller) => <LinesWords lines={seller.held} /> },
    {
      head: say`Account`,
      number: true,
      cell: (seller) => (
        <Owed
          minor={ledger.balances.moneyOf(`owed:${seller.seller}`)}
          to={`/accounts/money/owed:${seller.seller}`}
        />
      ),
    },
  ];
  return (
    <section aria-labelledby="sellers">
      <h2 id="sellers">{say`Sellers`}</h2>
      <Table
        caption={say`Sellers of the family`}
        hideCaption
        rows={account.sellers}
        keyOf={(seller) => seller.seller}
        columns={columns}
      />
    </section>
  );
}
