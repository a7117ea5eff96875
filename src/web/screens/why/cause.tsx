import type { AmountApart } from '../../../questions/explain/amounts-apart.ts';
import type { Explanation } from '../../../questions/explain/explain.ts';
import type { Cause as Known } from '../../../questions/explain/explain-seen.ts';
import type { BookRecord } from '../../../records/record.ts';
import { explanationWords } from '../../../statements/explanation-words.ts';
import { oddsWords } from '../../../statements/odds-words.ts';
import { type Draft, useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { Sentence } from '../../parts/sentence.tsx';
import { say } from '../../say.ts';
import { ApartList } from './apart-list.tsx';
import { draftsOf } from './drafts-of.ts';

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
  readonly cause: Known;
  readonly day: string;
  /** Explanations of the list with these odds, this one among them. */
  readonly ties: number;
  readonly taking: Taking;
}) {
  const { ledger } = useBook();
  const { cause, day, ties, taking } = props;
  const { explanation, apart } = cause;
  const isClosed = useClosed() !== undefined;
  const words = explanationWords(explanation, ledger, say);
  return (
    <li class="cause">
      <p class="cause-odds">
        {oddsWords(explanation.odds, say)}
        {ties > 1 && (
          <span class="cause-tie"> {say`· a tie: ${ties} here are equally likely`}</span>
        )}
      </p>
      <p class="cause-words">{words}</p>
      <Concerned explanation={explanation} />
      <details open>
        <summary>{say`Before and after, at the end of ${say.day(day)}`}</summary>
        <ApartList apart={apart} label={say`Balances before and after`} then={say`then`} />
      </details>
      {!isClosed && (
        <Button
          onClick={() => taking.take(draftsOf(cause.records), { words, apart })}
          disabled={taking.busy}
          label={say`Take this: ${words}`}
        >
          {say`Take this`}
        </Button>
      )}
    </li>
  );
}

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
    <ul class="record-list" aria-label={say`Records concerned`}>
      {records.map((record) => (
        <li key={record.id}>
          {'date' in record && <span class="soft day">{say.day(record.date)} </span>}
          <Sentence record={record} />
        </li>
      ))}
    </ul>
  );
}
