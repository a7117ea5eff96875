import { orderedAgainstTaken } from '../../../questions/ordered-against-taken.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { linesToType } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import { flatLines, type Typed } from './form-values.ts';

/** Fills in what the seller ordered and has not taken over yet, with one tap. */
export function OrderedGoods(props: {
  readonly typed: Typed;
  readonly onType: (typed: Typed) => void;
}) {
  const { ledger } = useBook();
  const { typed, onType } = props;
  if (!typed.seller) return null;
  const ordered = orderedAgainstTaken(ledger, [typed.seller]);
  if (ordered.toHandOver === 0) return null;
  const open = ordered.lines.filter((line) => line.toHandOver > 0);
  const lines = Object.fromEntries(open.map((line) => [line.product, line.toHandOver]));
  return (
    <p class="ordered-goods">
      <Button
        onClick={() =>
          onType({ ...typed, ...flatLines('lines', linesToType(lines, ledger, typed.date ?? '')) })
        }
      >
        {say.count(
          ordered.toHandOver,
        )`Fill in the # unit ordered and not yet taken|Fill in the # units ordered and not yet
          taken`}
      </Button>
    </p>
  );
}
