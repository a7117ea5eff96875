import type { RecordOf } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { say } from '../../say.ts';

/** Every price of a product with its first day; each opens the record that states it. */
export function PriceHistory({ product }: { readonly product: RecordOf<'product'> }) {
  const { ledger } = useBook();
  const steps = ledger.prices.get(product.product) ?? [];
  return (
    <ul class="price-history">
      {steps.map((step) => (
        <li key={step.from}>
          <a href={`/records/${step.record}`}>
            {say.pieces`${<Money minor={step.price} plain />} from ${say.day(step.from)}`}
          </a>
          <span class="soft">, {say`case of ${step.caseUnits}`}</span>
        </li>
      ))}
    </ul>
  );
}
