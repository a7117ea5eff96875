import { type Signal, useSignal } from '@preact/signals';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { TextField } from '../../parts/field.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { typedWhole } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import { type OnlyHere, onlyHere } from './only-here.ts';
import { takeOff } from './take-all-off.ts';

/**
 * Takes the book off this phone. What no server has holds it up, until the person has written how
 * much of it may be lost.
 */
export function TakeOff() {
  const book = useBook();
  const lost = useSignal<OnlyHere | undefined>(undefined);
  const typed = useSignal('');
  const attempt = useSignal(0);
  const busy = useSignal(false);
  const take = async (event: SubmitEvent) => {
    event.preventDefault();
    busy.value = true;
    await book.refresh();
    const here = await onlyHere(book.copies);
    const all = sizeOf(here);
    const confirmed = typedWhole(typed.value);
    if (all === 0 || (all === sizeOf(lost.value) && confirmed.ok && confirmed.value === all)) {
      return takeOff(book);
    }
    attempt.value = lost.value === undefined ? 0 : attempt.value + 1;
    lost.value = here;
    busy.value = false;
  };
  const here = sizeOf(lost.value);
  const errors =
    attempt.value === 0 || here === 0
      ? []
      : [{ field: 'lost', words: say`Write ${here}, or close this page: nothing was taken off.` }];
  return (
    <section aria-labelledby="take-off">
      <h2 id="take-off">{say`Take the book off this phone`}</h2>
      <About />
      <form onSubmit={take} noValidate>
        <ErrorSummary errors={errors} attempt={attempt.value} />
        {lost.value !== undefined && here > 0 && (
          <MayBeLost here={lost.value} typed={typed} error={errors[0]?.words} />
        )}
        <Button kind={here > 0 ? 'stop' : 'plain'} submit disabled={busy.value}>
          {here > 0 ? say`Take it off, and lose them` : say`Take it off this phone`}
        </Button>
      </form>
    </section>
  );
}

function sizeOf(here: OnlyHere | undefined): number {
  return here === undefined ? 0 : here.records + here.lines.length;
}

function About() {
  return (
    <p>
      {say`For a phone that is given back or given on. The copy of every book and the app itself go
        from this browser, which is signed out. The server keeps its book as it is.`}
    </p>
  );
}

function MayBeLost(props: {
  readonly here: OnlyHere;
  readonly typed: Signal<string>;
  readonly error: string | undefined;
}) {
  const { here, typed, error } = props;
  const lines = here.lines.length;
  const held = [
    here.records > 0 &&
      say.count(here.records)`Not taken off: # record is only on this phone. Send it first.|Not
        taken off: # records are only on this phone. Send them first.`,
    lines > 0 &&
      say.count(lines)`Not taken off: # line of a stall’s sheet is only on this phone. Hand it in
        first.|Not taken off: # lines of stalls’ sheets are only on this phone. Hand them in
        first.`,
  ];
  return (
    <>
      <div role="alert">
        {held.map(
          (words) =>
            words && (
              <p class="phone-held" key={words}>
                <span aria-hidden="true">▲</span> {words}
              </p>
            ),
        )}
      </div>
      <TextField
        label={say`How many records and lines may be lost for good?`}
        name="lost"
        hint={say`Only where they cannot be sent any more. Write ${sizeOf(here)}.`}
        inputMode="numeric"
        value={typed.value}
        onValue={(text) => (typed.value = text)}
        error={error}
      />
    </>
  );
}
