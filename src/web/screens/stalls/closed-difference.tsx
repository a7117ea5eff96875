import { stallSettlement } from '../../../questions/stall-settlement.ts';
import type { RecordOf } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { Difference, Units } from '../../parts/figures.tsx';
import { say } from '../../say.ts';
import { whyStall } from '../../why-address.ts';

/** What a settled stall sold, and whether its money agreed. */
export function ClosedDifference({ close }: { readonly close: RecordOf<'stall-close'> }) {
  const { ledger } = useBook();
  // The record's own cash counts: an old tally may have been left as it was when the sum was
  // edited.
  const { tally: _tally, ...counted } = close;
  const answer = stallSettlement(ledger, counted);
  const to = `/records/${close.id}`;
  return (
    <>
      <Units units={answer.sold} words={say.count(answer.sold)`# sold|# sold`} to={to} />{' '}
      <Difference amount={answer.difference} of="money" to={to} />
      {answer.difference !== 0 && (
        <>
          {' '}
          <a class="no-print" href={whyStall(close.stall)}>
            {say`Why?`}
          </a>
        </>
      )}
    </>
  );
}
