import type { CountDifference } from '../../../questions/count-difference.ts';
import { StateMark } from '../../parts/state-mark.tsx';
import { say } from '../../say.ts';

/** A count in a few words: agrees, or what is short and over, each by itself. */
export function CountOutcome({ difference }: { readonly difference: CountDifference }) {
  const { products, agrees, short, over } = difference;
  if (agrees) return <StateMark mark="done" word={say`agrees`} />;
  const left = products.filter((product) => product.state === 'not-counted').length;
  const parts = [
    short > 0 ? say`${say.units(short)} short` : '',
    over > 0 ? say`${say.units(over)} over` : '',
    left > 0 ? say.count(left)`# product not counted|# products not counted` : '',
  ];
  return <StateMark mark="open" word={parts.filter((part) => part !== '').join(say`, `)} />;
}
