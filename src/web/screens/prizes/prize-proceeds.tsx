import { prizeWaiver } from '../../../questions/prize-waiver.ts';
import { proceedsDue } from '../../../questions/proceeds-due.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { say } from '../../say.ts';

/** What the group keeps, and what doing without prizes would change: the whole group's figure. */
export function PrizeProceeds() {
  const { ledger } = useBook();
  const due = proceedsDue(ledger);
  if (due === undefined) return null;
  const waiver = prizeWaiver(ledger);
  return (
    <section aria-labelledby="proceeds">
      <h2 id="proceeds">{say`What the group keeps`}</h2>
      <p>
        {say.pieces`${say.count(due.credited)`# credited unit|# credited units`} at
          ${<Money minor={due.centsPerUnit} plain />}: ${<Money minor={due.due} />} for the whole
          group.`}
      </p>
      {waiver !== undefined && (
        <p>
          {say.pieces`Without prizes it is ${<Money minor={waiver.morePerUnit} plain />} more for
            each unit: ${<Money minor={waiver.more} />} more,
            ${<Money minor={waiver.withoutPrizes} />} for the whole group. It is never parted by
            family.`}
        </p>
      )}
    </section>
  );
}
