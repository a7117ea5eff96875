import { useSignal } from '@preact/signals';
import type { BookRecord } from '../../records/record.ts';
import { useBook } from '../book.ts';
import type { OnPhone } from '../on-phone.ts';
import { say } from '../say.ts';
import { undoDraft } from '../undo.ts';
import { Button } from './button.tsx';
import { useClosed } from './closed-season.tsx';
import { Sentence } from './sentence.tsx';

/**
 * What was saved last, as sentences, with Undo; shown by Page, read out once by a screen reader.
 * Its room is there from the tap on: what a person looks at does not jump when the save is done.
 */
export function SavedNotice() {
  const book = useBook();
  const trouble = useSignal('');
  const saving = book.saving.value.length > 0;
  const records = saving ? book.saving.value : book.saved.value;
  const closed = useClosed() !== undefined;
  const where = saving ? 'nowhere' : whereIs(records, book.onPhone.value);
  const undo = async () => {
    const undone = await book.append([...records].reverse().map((r) => undoDraft(book.ledger, r)));
    trouble.value = undone.ok ? '' : say.told(undone.refusal.message);
  };
  return (
    <div role="status" class="saved no-print">
      {records.length > 0 && (
        <div class={saving ? 'saved-line saving-line' : 'saved-line'}>
          <SavedMark where={where} />
          <span class={saving ? 'saved-room' : 'saved-text'}>
            {records.length > 1 &&
              `${say.count(records.length)`# record. Last:|# records. Last:`} `}
            <Sentence record={records[records.length - 1]} />
          </span>
          <span class={saving ? 'saved-verbs saved-room' : 'saved-verbs'}>
            {!closed && where !== 'held' && (
              <Button quiet onClick={undo}>
                {say`Undo`}
              </Button>
            )}
            <Button quiet onClick={() => (book.saved.value = [])}>
              {say`Hide`}
            </Button>
          </span>
        </div>
      )}
      {trouble.value !== '' && <p class="error-text">{trouble.value}</p>}
    </div>
  );
}

/** "Saved" is the server's word; until it came, the record is saved on this phone. */
function SavedMark(props: { readonly where: Where }) {
  switch (props.where) {
    case 'nowhere':
      return <span class="phone-mark">{say`Saving…`}</span>;
    case 'server':
      return <span class="saved-mark">{say`Saved`}</span>;
    case 'phone':
      return <span class="phone-mark">{say`Saved on this phone`}</span>;
    case 'held':
      return (
        <a class="phone-held" href="/phone">
          <span aria-hidden="true">▲</span> {say`Not taken by the server`}
        </a>
      );
  }
}

type Where = 'nowhere' | 'server' | 'phone' | 'held';

function whereIs(records: readonly BookRecord[], { waiting, held, takenBack }: OnPhone): Where {
  const isIn = (entries: OnPhone['waiting']): boolean => {
    const ids = new Set(entries.flatMap((entry) => entry.ids));
    return records.some(({ id }) => ids.has(id));
  };
  if (isIn(held) || isIn(takenBack)) return 'held';
  return isIn(waiting) ? 'phone' : 'server';
}
