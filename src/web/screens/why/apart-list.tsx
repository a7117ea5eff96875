import type { AmountApart } from '../../../questions/explain/amounts-apart.ts';
import { apartName } from '../../../statements/apart-words.ts';
import { balanceFigure } from '../../../statements/place-words.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';
import { Figure } from '../board/place-list.tsx';

/** Amounts in two states, each as a figure with its direction in words. */
export function ApartList(props: {
  readonly apart: readonly AmountApart[];
  readonly label: string;
  /** Read out between the two figures. */
  readonly then: string;
}) {
  const { ledger, currency } = useBook();
  return (
    <ul class="apart-list" aria-label={props.label}>
      {props.apart.map((each) => {
        const figure = (amount: number) =>
          balanceFigure(each.ledger, each.account, amount, currency, say);
        return (
          <li key={`${each.ledger}:${each.account} ${each.product}`}>
            <span class="apart-name">{apartName(each, ledger, say)}</span>{' '}
            <span class="apart-figures">
              <Figure figure={figure(each.before)} /> <span aria-hidden="true">→</span>
              <span class="only-read">{props.then}</span> <Figure figure={figure(each.after)} />
            </span>
          </li>
        );
      })}
    </ul>
  );
}
