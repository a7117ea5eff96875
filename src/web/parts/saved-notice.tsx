import { useSignal } from '@preact/signals';
import type { BookRecord } from '../../records/record.ts';
import { useBook } from '../book.ts';
import { undoDraft } from '../undo.ts';
import { Button } from './button.tsx';
import { useClosed } from './closed-season.tsx';
import { Sentence } from './sentence.tsx';

/**
 * What was saved last, as sentences, with Undo; shown by Page, read out once by a screen reader.
 */
export function SavedNotice() {
  const book = useBook();
  const trouble = useSignal('');
  const records = book.saved.value;
  const closed = useClosed() !== undefined;
  const undo = async () => {
    const undone = await book.append([...records].reverse().map((r) => undoDraft(book.ledger, r)));
    trouble.value = undone.ok ? '' : undone.refusal.message;
  };
  return (
    <div role="status" class="saved no-print">
      {records.length > 0 && (
        <div class="saved-line">
          <SavedMark records={records} />
          <span class="saved-text">
            {records.length > 1 && `${records.length} records. Last: `}
            <Sentence record={records[records.length - 1]} />
          </span>
          <span class="saved-verbs">
            {!closed && (
              <Button quiet onClick={undo}>
                Undo
              </Button>
            )}
            <Button quiet onClick={() => (book.saved.value = [])}>
              Hide
            </Button>
          </span>
        </div>
      )}
      {trouble.value !== '' && <p class="error-text">{trouble.value}</p>}
    </div>
  );
}

/** "Saved" is the server's word; until it came, the record is saved on this phone. */
function SavedMark(props: { readonly records: readonly BookRecord[] }) {
  const { waiting } = useBook().onPhone.value;
  const onlyHere = new Set(waiting.flatMap(({ ids }) => ids));
  return props.records.some(({ id }) => onlyHere.has(id)) ? (
    <span class="phone-mark">Saved on this phone</span>
  ) : (
    <span class="saved-mark">Saved</span>
  );
}
