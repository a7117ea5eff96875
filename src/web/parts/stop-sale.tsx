import { standingHolds } from '../../questions/standing-holds.ts';
import { useBook } from '../book.ts';
import { say } from '../say.ts';
import { Octagon } from './notice.tsx';

/** Shown wherever a product is listed while a stop-sale of it stands; nothing otherwise. */
export function StopSale({ product }: { readonly product: string }) {
  const holds = standingHolds(useBook().ledger, product);
  if (holds.length === 0) return null;
  return (
    <strong class="stop-sale">
      <span aria-hidden="true">
        <Octagon />
      </span>{' '}
      {say`Stop-sale`}:
      {holds.map(({ lot, reason, id }) => (
        <span key={id}> {lot === undefined ? reason : say`lot ${lot}: ${reason}`}</span>
      ))}
    </strong>
  );
}
