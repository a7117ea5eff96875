import { moneyText } from '../../statements/money-text.ts';
import { useBook } from '../book.ts';

/** What is owed, its direction in words: `$36.00 still to pay`, `$5.00 in credit`, `even`. */
export function Owed(props: {
  /** Minor units; negative is in credit. */
  readonly minor: number;
  readonly to?: string;
}) {
  const { currency } = useBook();
  if (props.minor === 0) return <span class="owed owed-even">✓ even</span>;
  const words = props.minor > 0 ? 'still to pay' : 'in credit';
  const text = (
    <>
      {moneyText(Math.abs(props.minor), currency)} <span class="owed-words">{words}</span>
    </>
  );
  return props.to === undefined ? (
    <span class="owed">{text}</span>
  ) : (
    <a class="owed" href={props.to}>
      {text}
    </a>
  );
}
