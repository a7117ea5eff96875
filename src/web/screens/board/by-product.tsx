import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Units } from '../../parts/figures.tsx';

/** Units of one stock account, product by product; each opens the records behind it. */
export function ByProduct(props: {
  readonly account: string;
  readonly lines: Readonly<Record<string, number>>;
  readonly ledgerName?: 'stock' | 'credit';
}) {
  const { ledger } = useBook();
  const entries = Object.entries(props.lines);
  if (entries.length === 0) return null;
  const sign = props.account === 'supplier' ? -1 : 1;
  return (
    <ul class="by-product">
      {entries.map(([product, units]) => (
        <li key={product}>
          <a href={`/accounts/${props.ledgerName ?? 'stock'}/${props.account}?product=${product}`}>
            {productName(ledger.setup, product)} <Units units={sign * units} plain />
          </a>
        </li>
      ))}
    </ul>
  );
}
