import type { RecordOf } from '../../../records/record.ts';
import { type CountTyped, stepOf } from './count-typed.ts';

/** All products with what was keyed; tapping one goes back to it. */
export function CountProgress(props: {
  readonly products: readonly RecordOf<'product'>[];
  readonly typed: CountTyped;
  readonly place: number;
  readonly onPlace: (place: number) => void;
}) {
  return (
    <ol class="count-progress" aria-label="Products in shelf order">
      {props.products.map((product, place) => (
        <li key={product.product}>
          <button
            type="button"
            aria-current={place === props.place ? 'step' : undefined}
            onClick={() => props.onPlace(place)}
          >
            <span>{product.name}</span>
            <span class="count-keyed">{keyed(props.typed, product)}</span>
          </button>
        </li>
      ))}
    </ol>
  );
}

/** What was keyed, as it was keyed: units would be a sum the counter did not count. */
function keyed(typed: CountTyped, { product }: RecordOf<'product'>): string {
  const step = stepOf(typed, product);
  if (step === 'to-do') return 'to count';
  if (step === 'not-counted') return 'left out';
  const { cases = '', singles = '' } = typed.lines[product] ?? {};
  const parts = [
    cases.trim() === '' ? '' : `${cases.trim()} ${cases.trim() === '1' ? 'case' : 'cases'}`,
    singles.trim() === ''
      ? ''
      : `${singles.trim()} ${singles.trim() === '1' ? 'single' : 'singles'}`,
  ];
  return parts.filter((part) => part !== '').join(' + ');
}
