import { say } from '../say.ts';
import '../screens/form/form.css';
import { useId } from 'preact/hooks';
import { useBook } from '../book.ts';
import { Button } from '../parts/button.tsx';
import { ClosedNotice, useClosed } from '../parts/closed-season.tsx';
import { SavedNotice } from '../parts/saved-notice.tsx';
import { Effect } from '../screens/form/effect.tsx';
import { LineExamples } from './line-examples.tsx';
import { LineField } from './line-field.tsx';
import { Readings } from './readings.tsx';
import { useLine } from './use-line.ts';
import { useSpoken } from './use-spoken.ts';

/**
 * One line to write a record in. How it is read stands below while it is written: one reading is
 * saved with Enter, two are asked (arrows or a tap), and what is not understood is named. It stays
 * open for the next line; what was saved is shown with Undo.
 */
export function LineBox() {
  const line = useLine(useBook());
  const id = useId();
  const spoken = useSpoken(line.read);
  const isClosed = useClosed() !== undefined;
  if (isClosed) return <ClosedNotice />;
  return (
    <form
      class="line-box"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        line.save(line.chosen);
      }}
    >
      <LineField id={id} line={line} />
      <Readings id={id} read={line.read} chosen={line.place} onSave={line.save} />
      <p class="only-read" role="status">
        {spoken}
      </p>
      {line.errors.map(({ words }) => (
        <p class="error-text" role="alert" key={words}>
          {words}
        </p>
      ))}
      {line.chosen !== undefined && <Effect draft={line.chosen} replaces={undefined} />}
      <div class="form-end">
        <Button kind="main" submit disabled={line.busy || line.chosen === undefined}>
          {say`Save`}
        </Button>
      </div>
      <SavedNotice />
      {line.text.trim() === '' && <LineExamples onWrite={line.write} />}
    </form>
  );
}
