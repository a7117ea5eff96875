import { useMemo } from 'preact/hooks';
import type { Balances } from '../../../ledger/balances.ts';
import { type AmountApart, amountsApart } from '../../../questions/explain/amounts-apart.ts';
import type { Explanation } from '../../../questions/explain/explain.ts';
import type { BookRecord } from '../../../records/record.ts';
import { dayText } from '../../../statements/day-text.ts';
import { explanationWords } from '../../../statements/explanation-words.ts';
import { oddsWords } from '../../../statements/odds-words.ts';
import { type Draft, useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { Sentence } from '../../parts/sentence.tsx';
import { ApartList } from './apart-list.tsx';
import { editDrafts } from './edit-drafts.ts';

/** What was taken: what it said, what it changed, and the records that were written. */
export interface Taken {
  readonly words: string;
  readonly apart: readonly AmountApart[];
  readonly records: readonly BookRecord[];
}

/** How an explanation is taken; it outlasts the list, which is made anew while it is saved. */
export interface Taking {
  readonly busy: boolean;
  take(drafts: readonly Draft[], about: Omit<Taken, 'records'>): unknown;
}

/**
 * One explanation: how likely, what may have happened and what would settle it, the records it is
 * about, balances before and after, and the button that writes its edits.
 */
export function Cause(props: {
  readonly explanation: Explanation;
  readonly before: Balances;
  readonly day: string;
  /** Explanations of the list with these odds, this one among them. */
  readonly ties: number;
  readonly taking: Taking;
}) {
  const { ledger } = useBook();
  const { explanation, before, day, ties, taking } = props;
  const isClosed = useClosed() !== undefined;
  const words = explanationWords(explanation, ledger);
  const { drafts, apart } = useChange(explanation, before, day);
  return (
    <li class="cause">
      <p class="cause-odds">
        {oddsWords(explanation.odds)}
        {ties > 1 && <span class="cause-tie"> · a tie: {ties} here are equally likely</span>}
      </p>
      <p class="cause-words">{words}</p>
      <Concerned explanation={explanation} />
      <details open>
        <summary>Before and after, at the end of {dayText(day)}</summary>
        <ApartList apart={apart} label="Balances before and after" then="then" />
      </details>
      {!isClosed && (
        <Button
          onClick={() => taking.take(drafts, { words, apart })}
          disabled={taking.busy}
          label={`Take this: ${words}`}
        >
          Take this
        </Button>
      )}
    </li>
  );
}

/** What taking an explanation would write, and what that would change. */
function useChange(explanation: Explanation, before: Balances, day: string) {
  const book = useBook();
  return useMemo(() => {
    const drafts = editDrafts(explanation.edits, book.ledger);
    const apart = amountsApart(before, book.supposing(drafts).asOf(day));
    const shown = apart.filter((each) => !LEFT_OUT.has(`${each.ledger}:${each.account}`));
    return { drafts, apart: shown };
  }, [explanation]);
}

/** Accounts that follow from others and would only be noise here. */
const LEFT_OUT = new Set(['money:goods', 'stock:supplier', 'credit:issued']);

function Concerned({ explanation }: { readonly explanation: Explanation }) {
  const { ledger } = useBook();
  const ids = explanation.mistakes.flatMap(({ record, twin, because }) => [
    record?.id,
    twin?.id,
    because,
  ]);
  const records = [...new Set(ids)].flatMap((id) => {
    const known = id === undefined ? undefined : ledger.standing.get(id);
    return known === undefined ? [] : [known];
  });
  if (records.length === 0) return null;
  return (
    <ul class="record-list" aria-label="Records concerned">
      {records.map((record) => (
        <li key={record.id}>
          {'date' in record && <span class="soft day">{dayText(record.date)} </span>}
          <Sentence record={record} />
        </li>
      ))}
    </ul>
  );
}
