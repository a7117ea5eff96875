import { type Signal, useSignal } from '@preact/signals';
import type { OutboxEntry } from '../../../journal/book-copy.ts';
import { type BookRecord, isMovement } from '../../../records/record.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { TextField } from '../../parts/field.tsx';
import { say } from '../../say.ts';
import { contentOf } from '../../undo.ts';

/** Refusals that a reason for coming late answers. */
const WANTS_REASON: ReadonlySet<string> = new Set(['late_entry_needs_a_reason']);

/** One tap that the server did not take: what, why, and what can be done about it. */
export function HeldEntry({ entry }: { readonly entry: OutboxEntry }) {
  const book = useBook();
  const trouble = useSignal('');
  const reason = useSignal('');
  const { number, held } = entry;
  const records = entry.ids.flatMap((id) => book.recordHere(id) ?? []);
  const withReason = async () => {
    const late = reason.value.trim();
    if (late === '') {
      trouble.value = say`Write why this comes late.`;
      return;
    }
    // A record is never changed: the same content is written once more, with the reason.
    const drafts = records.map((record) =>
      contentOf(isMovement(record) ? { ...record, late } : record),
    );
    const added = await book.append(drafts);
    if (added.ok) await book.takeBack(number);
    else trouble.value = say.told(added.refusal.message);
  };
  return (
    <article class="held">
      <Refused records={records} message={held?.message ?? ''} />
      {trouble.value !== '' && (
        <p class="error-text" role="alert">
          {trouble.value}
        </p>
      )}
      {WANTS_REASON.has(held?.name ?? '') && (
        <LateReason number={number} reason={reason} onSave={withReason} />
      )}
      <p class="held-verbs">
        <Button onClick={() => book.sendAgain(number)}>{say`Send again`}</Button>
        <Button onClick={() => book.takeBack(number)}>{say`Take back`}</Button>
      </p>
    </article>
  );
}

function Refused(props: { readonly records: readonly BookRecord[]; readonly message: string }) {
  const { ledger } = useBook();
  return (
    <>
      <ul>
        {props.records.map((record) => (
          <li key={record.id}>{recordSentence(record, ledger, say)}</li>
        ))}
      </ul>
      <p class="held-why">{say.told(props.message)}</p>
    </>
  );
}

function LateReason(props: {
  readonly number: number;
  readonly reason: Signal<string>;
  readonly onSave: () => unknown;
}) {
  const { number, reason, onSave } = props;
  return (
    <div class="held-late">
      <TextField
        label={say`Why it comes late`}
        name={`late-${number}`}
        value={reason.value}
        onValue={(said) => {
          reason.value = said;
        }}
        maxLength={500}
      />
      <Button kind="main" onClick={onSave}>
        {say`Save with this reason`}
      </Button>
    </div>
  );
}
