import { useEffect, useRef } from 'preact/hooks';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { useSaving } from '../../parts/saving.ts';
import { Sentence } from '../../parts/sentence.tsx';
import { say } from '../../say.ts';
import { undoDraft } from '../../undo.ts';
import { ApartList } from './apart-list.tsx';
import type { Taken } from './cause.tsx';

/** What taking an explanation wrote and changed. Its button is gone, so the focus is here. */
export function TakenNotice(props: { readonly taken: Taken; readonly onUndone: () => void }) {
  const { ledger } = useBook();
  const saving = useSaving();
  const head = useRef<HTMLHeadingElement>(null);
  const { words, apart, records } = props.taken;
  useEffect(() => head.current?.focus(), [props.taken]);
  const undo = () => {
    const drafts = [...records].reverse().map((record) => undoDraft(ledger, record));
    return saving.save({ ok: true, value: drafts }, props.onUndone);
  };
  return (
    <section class="taken" aria-labelledby="taken">
      <h2 id="taken" tabIndex={-1} ref={head}>
        {say`Taken, and written into the book`}
      </h2>
      <p>{words}</p>
      <ul class="record-list" aria-label={say`Records written`}>
        {records.map((record) => (
          <li key={record.id}>
            <Sentence record={record} />
          </li>
        ))}
      </ul>
      <ApartList apart={apart} label={say`What changed`} then={say`then`} />
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <Button onClick={undo} disabled={saving.busy}>
        {say`Undo this change`}
      </Button>
    </section>
  );
}
