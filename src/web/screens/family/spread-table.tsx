import type { PaymentShare, PaymentSpread } from '../../../questions/spread-payment.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { Owed } from '../../parts/owed.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';

/** How a family's payment falls on its sellers, before it is saved. */
export function SpreadTable({ spread }: { readonly spread: PaymentSpread }) {
  const { ledger, currency } = useBook();
  const columns: readonly Column<PaymentShare>[] = [
    { head: say`Seller`, cell: (share) => sellerName(ledger.setup, share.seller) },
    { head: say`Now`, number: true, cell: (share) => <Owed minor={share.owes} /> },
    {
      head: say`Of this payment`,
      number: true,
      cell: (share) => <Money minor={share.cents} plain />,
    },
  ];
  return (
    <div class="spread">
      <Table
        caption={say`How it is spread`}
        rows={spread.shares}
        keyOf={(share) => share.seller}
        columns={columns}
      />
      <p class="small soft">
        {say`In proportion to what each has still to pay, never more than that; the last cents to
          the largest remainders, equal ones in the order of seller ids.`}
      </p>
      {spread.beyondTo !== undefined && (
        <p role="status">
          {say`${say.money(spread.beyond, currency)} more than is to pay: kept in credit for
            ${sellerName(ledger.setup, spread.beyondTo)}.`}
        </p>
      )}
    </div>
  );
}
