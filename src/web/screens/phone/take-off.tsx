import { type Signal, useSignal } from '@preact/signals';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { TextField } from '../../parts/field.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { typedWhole } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import { onlyHere, takeOff } from './take-all-off.ts';

/**
 * Takes the book off this phone. What no server has holds it up, until the person has written how
 * much of it may be lost.
 */
export function TakeOff() {
  const book = useBook();
  const lost = useSignal<number | undefined>(undefined);
  const typed = useSignal('');
  const attempt = useSignal(0);
  const busy = useSignal(false);
  const take = async (event: SubmitEvent) => {
    event.preventDefault();
    busy.value = true;
    await book.refresh();
    const here = await onlyHere(book.copies);
    const confirmed = typedWhole(typed.value);
    if (here === 0 || (here === lost.value && confirmed.ok && confirmed.value === here)) {
      await book.atRest();
      return takeOff(book.copies);
    }
    attempt.value = lost.value === undefined ? 0 : attempt.value + 1;
    lost.value = here;
    busy.value = false;
  };
  const here = lost.value ?? 0;
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
        {here > 0 && <MayBeLost here={here} typed={typed} error={errors[0]?.words} />}
        <Button kind={here > 0 ? 'stop' : 'plain'} submit disabled={busy.value}>
          {here > 0 ? say`Take it off, and lose them` : say`Take it off this phone`}
        </Button>
      </form>
    </section>
  );
}

function About() {
  return (
    <p>
      {say`For a phone that is given back or given on. The copy of every book and the app itself go
        from this browser. The server keeps its book as it is.`}
    </p>
  );
}

function MayBeLost(props: {
  readonly here: number;
  readonly typed: Signal<string>;
  readonly error: string | undefined;
}) {
  const { here, typed, error } = props;
  return (
    <>
      <p class="phone-held" role="alert">
        <span aria-hidden="true">▲</span>{' '}
        {say.count(here)`Not taken off: # record is only on this phone. Send it first.|Not taken
          off: # records are only on this phone. Send them first.`}
      </p>
      <TextField
        label={say`How many records may be lost for good?`}
        name="lost"
        hint={say`Only where they cannot be sent any more. Write the number above.`}
        inputMode="numeric"
        value={typed.value}
        onValue={(text) => (typed.value = text)}
        error={error}
      />
    </>
  );
}
