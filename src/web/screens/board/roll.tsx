import { useSignal } from '@preact/signals';
import { dayOf } from '../../../questions/find-records.ts';
import { latestRecords } from '../../../questions/latest-records.ts';
import type { BookRecord } from '../../../records/record.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { link } from '../../parts/link.tsx';
import { Sentence } from '../../parts/sentence.tsx';
import { say } from '../../say.ts';
import { undoDraft } from '../../undo.ts';

const SHOWN_FIRST = 14;

/** The running list of what was written last, each line a sentence with Undo. */
export function Roll() {
  const book = useBook();
  const records = latestRecords(book.ledger, SHOWN_FIRST);
  return (
    <section class="roll" aria-labelledby="roll-head">
      <h2 class="column-head" id="roll-head">
        {say.pieces`Running list ${link('/find', say`find others`)}`}
      </h2>
      {records.length === 0 ? (
        <p class="none">
          {say.pieces`Nothing is recorded yet. Begin with ${link('/set-up', say`the set-up`)}:
            products and sellers; then record the first ${link('/add/delivery', say`delivery`)}.`}
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
    trouble.value = undone.ok ? '' : say.told(undone.refusal.message);
  };
  return (
    <li class="roll-line">
      <span class={hideDay ? 'roll-day roll-day-same' : 'roll-day'}>{say.day(dayOf(record))}</span>
      <span class="roll-words">
        <Sentence record={record} />
        {record.replaces !== undefined && <span class="soft"> {say`(edited)`}</span>}
        {trouble.value !== '' && <span class="error-text">{trouble.value}</span>}
      </span>
      <Button quiet onClick={undo} label={say`Undo: ${recordSentence(record, book.ledger, say)}`}>
        {say`Undo`}
      </Button>
    </li>
  );
}
