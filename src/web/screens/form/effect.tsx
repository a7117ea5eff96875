import { useMemo } from 'preact/hooks';
import type { ChangedBalance } from '../../../questions/changed-balances.ts';
import { followsFromOthers } from '../../../questions/follows-from-others.ts';
import type { BookRecord } from '../../../records/record.ts';
import { accountName } from '../../../statements/account-name.ts';
import { balanceFigure } from '../../../statements/place-words.ts';
import { type Draft, useBook } from '../../book.ts';
import { useSettled } from '../../parts/use-settled.ts';
import { say } from '../../say.ts';
import { Figure } from '../board/place-list.tsx';

const PAUSE_MS = 120;

/** Balances before and after, as they would be with what is typed so far. */
export function Effect(props: {
  readonly draft: Draft | undefined;
  readonly replaces: BookRecord | undefined;
}) {
  const book = useBook();
  const version = book.version.value;
  // The whole book is added up with it: once the typing pauses, not at every key.
  const key = JSON.stringify([props.draft ?? '', version]);
  const settled = useSettled({ draft: props.draft }, key, PAUSE_MS);
  const changed = useMemo(
    () => (settled?.draft === undefined ? [] : book.changesBy(settled.draft)),
    [settled],
  );
  const shown = changed.filter((change) => !followsFromOthers(change));
  return (
    <section class="effect" aria-label={say`Balances before and after`}>
      <h2 class="column-head">{say`Before and after`}</h2>
      {shown.length === 0 ? (
        <p class="none">
          {props.replaces === undefined
            ? say`Shown as soon as the form is filled in.`
            : say`No balance changes with this.`}
        </p>
      ) : (
        <ul aria-live="polite">
          {shown.map((change) => (
            <Change key={`${change.ledger}:${change.account}`} change={change} />
          ))}
        </ul>
      )}
    </section>
  );
}

function Change({ change }: { readonly change: ChangedBalance }) {
  const { ledger, currency } = useBook();
  const figure = (amount: number) =>
    balanceFigure(change.ledger, change.account, amount, currency, say);
  return (
    <li>
      <span class="effect-name">{accountName(ledger, change.ledger, change.account, say)}</span>
      <span class="effect-figures">
        <Figure figure={figure(change.before)} /> <span aria-hidden="true">→</span>
        <span class="only-read">{say`then`}</span> <Figure figure={figure(change.after)} />
      </span>
    </li>
  );
}
