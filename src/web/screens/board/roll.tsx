import { useSignal } from '@preact/signals';
import { dayOf } from '../../../questions/find-records.ts';
import { latestRecords } from '../../../questions/latest-records.ts';
import type { BookRecord } from '../../../records/record.ts';
import { dayText } from '../../../statements/day-text.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { Sentence } from '../../parts/sentence.tsx';
import { undoDraft } from '../../undo.ts';

const SHOWN_FIRST = 14;

/** The running list of what was written last, each line a sentence with Undo. */
export function Roll() {
  const book = useBook();
  const records = latestRecords(book.ledger, SHOWN_FIRST);
  return (
    <section class="roll" aria-labelledby="roll-head">
      <h2 class="column-head" id="roll-head">
        Running list <a href="/find">find others</a>
      </h2>
      {records.length === 0 ? (
        <p class="none">
          Nothing is recorded yet. Begin with <a href="/set-up">the set-up</a>: products and
          sellers; then record the first <a href="/add/delivery">delivery</a>.
        </p>
      ) : (
        <ol class="roll-lines">
          {records.map((record, place) => {
            const above = records[place - 1];
            const sameDay = above !== undefined && dayOf(above) === dayOf(record);
            return <RollLine key={record.id} record={record} hideDay={sameDay} />;
          })}
        </ol>
      )}
    </section>
  );
}

/** One record in a running list: the day (once a day), the sentence, and Undo. */
function RollLine(props: { readonly record: BookRecord; readonly hideDay: boolean }) {
  const book = useBook();
  const { record, hideDay } = props;
  const trouble = useSignal('');
  const undo = async () => {
    const undone = await book.append([undoDraft(book.ledger, record)]);
    trouble.value = undone.ok ? '' : undone.refusal.message;
  };
  return (
    <li class="roll-line">
      <span class={hideDay ? 'roll-day roll-day-same' : 'roll-day'}>{dayText(dayOf(record))}</span>
      <span class="roll-words">
        <Sentence record={record} />
        {record.replaces !== undefined && <span class="soft"> (edited)</span>}
        {trouble.value !== '' && <span class="error-text">{trouble.value}</span>}
      </span>
      <Button quiet onClick={undo} label={`Undo: ${recordSentence(record, book.ledger)}`}>
        Undo
      </Button>
    </li>
  );
}
