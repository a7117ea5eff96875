import type { CountDifference } from '../../../questions/count-difference.ts';
import { unitsText } from '../../../statements/money-text.ts';
import { StateMark } from '../../parts/state-mark.tsx';

/** A count in a few words: agrees, or what is short and over, each by itself. */
export function CountOutcome({ difference }: { readonly difference: CountDifference }) {
  const { products, agrees, short, over } = difference;
  if (agrees) return <StateMark mark="done" word="agrees" />;
  const left = products.filter((product) => product.state === 'not-counted').length;
  const parts = [
    short > 0 ? `${unitsText(short)} short` : '',
    over > 0 ? `${unitsText(over)} over` : '',
    left > 0 ? `${left} ${left === 1 ? 'product' : 'products'} not counted` : '',
  ];
  return <StateMark mark="open" word={parts.filter((part) => part !== '').join(', ')} />;
}
