import type { RecordOf } from '../../../records/record.ts';
import { dayText } from '../../../statements/day-text.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';

/** Every price of a product with its first day; each opens the record that states it. */
export function PriceHistory({ product }: { readonly product: RecordOf<'product'> }) {
  const { ledger } = useBook();
  const steps = ledger.prices.get(product.product) ?? [];
  return (
    <ul class="price-history">
      {steps.map((step) => (
        <li key={step.from}>
          <a href={`/records/${step.record}`}>
            <Money minor={step.price} plain /> from {dayText(step.from)}
          </a>
          <span class="soft">, case of {step.caseUnits}</span>
        </li>
      ))}
    </ul>
  );
}
