import type { RecordOf } from '../../../records/record.ts';
import { say } from '../../say.ts';
import { type CountTyped, stepOf } from './count-typed.ts';

/** All products with what was keyed; tapping one goes back to it. */
export function CountProgress(props: {
  readonly products: readonly RecordOf<'product'>[];
  readonly typed: CountTyped;
  readonly place: number;
  readonly onPlace: (place: number) => void;
}) {
  return (
    <ol class="count-progress" aria-label={say`Products in shelf order`}>
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
  if (step === 'to-do') return say`to count`;
  if (step === 'not-counted') return say`left out`;
  const { cases = '', singles = '' } = typed.lines[product] ?? {};
  const parts = [
    cases.trim() === '' ? '' : keyedCases(cases.trim()),
    singles.trim() === '' ? '' : keyedSingles(singles.trim()),
  ];
  return parts.filter((part) => part !== '').join(' + ');
}

/** What is no number yet stands as it was keyed. */
function keyedCases(text: string): string {
  const cases = Number(text);
  return Number.isSafeInteger(cases) ? say.count(cases)`# case|# cases` : say`${text} cases`;
}

function keyedSingles(text: string): string {
  const singles = Number(text);
  return Number.isSafeInteger(singles)
    ? say.count(singles)`# single|# singles`
    : say`${text} singles`;
}
