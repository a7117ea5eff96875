import '../screens/form/form.css';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { refused } from '../../base/outcome.ts';
import type { LineDraft } from '../../intake/one-line/line-kind.ts';
import { type LineRead, readLine } from '../../intake/one-line/read-line.ts';
import { useBook } from '../book.ts';
import { Button } from '../parts/button.tsx';
import { ClosedNotice, useClosed } from '../parts/closed-season.tsx';
import { SavedNotice } from '../parts/saved-notice.tsx';
import { useSaving } from '../parts/saving.ts';
import { Effect } from '../screens/form/effect.tsx';
import { lineContext } from './line-context.ts';
import { LineExamples } from './line-examples.tsx';
import { Readings } from './readings.tsx';
import { useSpoken } from './use-spoken.ts';

/**
 * One line to write a record in. How it is read stands below while it is written: one reading is
 * saved with Enter, two are asked (arrows or a tap), and what is not understood is named. It stays
 * open for the next line; what was saved is shown with Undo.
 */
export function LineBox() {
  const book = useBook();
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [at, setAt] = useState(-1);
  const saving = useSaving();
  // The dialog was opened to write here, and this chunk came after it.
  useEffect(() => field.current?.focus(), []);
  const isClosed = useClosed() !== undefined;
  const read: LineRead = text.trim() === '' ? refused([]) : readLine(text, lineContext(book));
  const drafts = read.ok ? read.value : [];
  const place = drafts.length === 1 ? 0 : at;
  const chosen = drafts[place];
  const spoken = useSpoken(read);
  const write = (line: string) => {
    setText(line);
    setAt(-1);
    field.current?.focus();
  };
  const save = (draft: LineDraft | undefined) => {
    if (draft === undefined || saving.busy) return;
    void saving.save({ ok: true, value: [draft] }, () => write(''));
  };
  const onKey = (event: KeyboardEvent) => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step === 0 || drafts.length < 2) return;
    event.preventDefault();
    setAt((place + step + drafts.length + (place < 0 && step < 0 ? 1 : 0)) % drafts.length);
  };
  if (isClosed) return <ClosedNotice />;
  return (
    <form
      class="line-box"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        save(chosen);
      }}
    >
      <label for={`${id}-line`}>What happened</label>
      <input
        ref={field}
        id={`${id}-line`}
        type="text"
        role="combobox"
        autocomplete="off"
        autocapitalize="none"
        spellcheck={false}
        aria-expanded={drafts.length > 0}
        aria-controls={`${id}-readings`}
        aria-autocomplete="list"
        aria-activedescendant={chosen === undefined ? undefined : `${id}-reading-${place}`}
        aria-describedby={`${id}-told`}
        maxLength={900}
        value={text}
        onInput={(event) => write(event.currentTarget.value)}
        onKeyDown={onKey}
      />
      <Readings id={id} read={read} chosen={place} onSave={save} />
      <p class="only-read" role="status">
        {spoken}
      </p>
      {saving.errors.map(({ words }) => (
        <p class="error-text" role="alert" key={words}>
          {words}
        </p>
      ))}
      {chosen !== undefined && <Effect draft={chosen} replaces={undefined} />}
      <div class="form-end">
        <Button kind="main" submit disabled={saving.busy || chosen === undefined}>
          Save
        </Button>
      </div>
      <SavedNotice />
      {text.trim() === '' && <LineExamples onWrite={write} />}
    </form>
  );
}
