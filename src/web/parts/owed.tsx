import { useBook } from '../book.ts';
import { say } from '../say.ts';

/** What is owed, its direction in words: `$36.00 still to pay`, `$5.00 in credit`, `even`. */
export function Owed(props: {
  /** Minor units; negative is in credit. */
  readonly minor: number;
  readonly to?: string;
}) {
  const { currency } = useBook();
  if (props.minor === 0) return <span class="owed owed-even">{say`✓ even`}</span>;
  const words = props.minor > 0 ? say`still to pay` : say`in credit`;
  const text = (
    <>
      {say.money(Math.abs(props.minor), currency)} <span class="owed-words">{words}</span>
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
