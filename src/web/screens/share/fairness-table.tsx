import { byName } from '../../../base/name-order.ts';
import { type SellerFairness, seasonFairness } from '../../../questions/share/season-fairness.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { ofUnits, partsText } from '../../../statements/parts-text.ts';
import { carriedSize } from '../../../statements/share-words.ts';
import { useBook } from '../../book.ts';
import { type Column, Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';

/** How all share-outs of the season together have treated each seller, in parts of a unit. */
export function FairnessTable() {
  const { ledger } = useBook();
  const { sellers, worst } = seasonFairness(ledger);
  if (sellers.length === 0) return null;
  const name = ({ seller }: SellerFairness) => sellerName(ledger.setup, seller);
  const columns: readonly Column<SellerFairness>[] = [
    { head: say`Seller`, cell: name },
    { head: say`Credited`, number: true, cell: (row) => say.units(row.credited) },
    { head: say`Due`, number: true, cell: (row) => partsText(row.due.valueOf(), say) },
    { head: say`So far`, cell: (row) => carriedSize(row.carried.valueOf(), say) },
  ];
  return (
    <section aria-labelledby="fairness">
      <h2 id="fairness">{say`All share-outs so far`}</h2>
      <p>
        {say`Nobody is more than ${ofUnits(worst, say)} from due. The next share-out makes up
          for it, as far as whole units can.`}
      </p>
      <Table
        caption={say`Out of pools, seller by seller`}
        hideCaption
        rows={[...sellers].sort((a, b) => byName(name(a), name(b)))}
        keyOf={(row) => row.seller}
        columns={columns}
      />
    </section>
  );
}
