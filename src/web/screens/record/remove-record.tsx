import { useSignal } from '@preact/signals';
import type { BookRecord } from '../../../records/record.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { Dialog } from '../../parts/dialog.tsx';
import { TextField } from '../../parts/field.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { say } from '../../say.ts';

/** Removes a record with a reason; it stays in the history and the removal can be undone. */
export function RemoveRecord({ record }: { readonly record: BookRecord }) {
  const book = useBook();
  const open = useSignal(false);
  const reason = useSignal('');
  const attempt = useSignal(0);
  const trouble = useSignal('');
  const remove = async (event: SubmitEvent) => {
    event.preventDefault();
    attempt.value += 1;
    const said = reason.value.trim();
    trouble.value = said === '' ? say`Write why it is removed.` : '';
    if (said === '') return;
    const removed = await book.append([{ kind: 'void', voids: record.id, reason: said }]);
    if (removed.ok) open.value = false;
    else trouble.value = say.told(removed.refusal.message);
  };
  const errors = trouble.value === '' ? [] : [{ field: 'why', words: trouble.value }];
  return (
    <>
      <Button onClick={() => (open.value = true)}>{say`Remove`}</Button>
      <Dialog
        open={open.value}
        title={say`Remove this record`}
        onClose={() => (open.value = false)}
      >
        <form onSubmit={remove} noValidate>
          <ErrorSummary errors={errors} attempt={attempt.value} />
          <p class="dialog-about">{recordSentence(record, book.ledger, say)}</p>
          <TextField
            label={say`Why is it removed?`}
            name="why"
            hint={say`Like: keyed twice. It stays in the history.`}
            value={reason.value}
            onValue={(value) => (reason.value = value)}
            error={errors[0]?.words}
          />
          <Button kind="main" submit>
            {say`Remove`}
          </Button>
        </form>
      </Dialog>
    </>
  );
}
