import { useSignal } from '@preact/signals';
import type { HistoryStep } from '../../../questions/record-history.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { say } from '../../say.ts';
import { undoDraft } from '../../undo.ts';
import { WrittenBy } from './written-by.tsx';

const STATES = { edited: say`edited`, removed: say`removed` };

/**
 * How a record came to be: who wrote, edited and removed what, and when; the last step has Undo.
 */
export function RecordHistoryList(props: {
  readonly steps: readonly HistoryStep[];
  readonly shown: string;
}) {
  const book = useBook();
  const trouble = useSignal('');
  const closed = useClosed() !== undefined;
  const undo = async (step: HistoryStep) => {
    const undone = await book.append([undoDraft(book.ledger, step.record)]);
    trouble.value = undone.ok ? '' : say.told(undone.refusal.message);
  };
  return (
    <section class="history" aria-labelledby="history-head">
      <h2 class="column-head" id="history-head">
        {say`History`}
      </h2>
      {trouble.value !== '' && <p class="error-text">{trouble.value}</p>}
      <ol>
        {props.steps.map((step) => {
          const { record, state } = step;
          const sentence = recordSentence(record, book.ledger, say);
          const undoable = !closed && state === 'counts' && props.steps.length > 1;
          return (
            <li key={record.id} class={state === 'counts' ? '' : 'history-gone'}>
              <span class="small soft">
                {verb(record)} <WrittenBy record={record} />
              </span>
              <span>
                {record.id === props.shown ? (
                  sentence
                ) : (
                  <a href={`/records/${record.id}`}>{sentence}</a>
                )}
                {state !== 'counts' && <span class="soft"> ({STATES[state]})</span>}
              </span>
              {undoable && (
                <Button quiet label={say`Undo: ${sentence}`} onClick={() => undo(step)}>
                  {say`Undo`}
                </Button>
              )}
            </li>
          );
        })}
      </ol>
    </section>
  );
}

function verb(record: HistoryStep['record']): string {
  if (record.kind === 'void') return say`Removed`;
  return record.replaces === undefined ? say`Written` : say`Edited`;
}
