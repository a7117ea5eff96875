import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { isDay } from '../../../base/day.ts';
import { useBook } from '../../book.ts';
import { go } from '../../navigation.ts';
import { Button } from '../../parts/button.tsx';
import { DayField } from '../../parts/field.tsx';
import { ErrorSummary, type FieldError } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import { type Asked, askedAddress, askedOf, typedOf } from './asked.ts';
import { SeenPlace } from './seen-place.tsx';

/** What is typed so far, what of it does not fit, and the search for causes. */
function useTyped(asked: Asked) {
  const { ledger, currency } = useBook();
  const first = useMemo(() => typedOf(asked, ledger, currency), []);
  const typed = useSignal(first);
  const errors = useSignal<readonly FieldError[]>([]);
  const attempt = useSignal(0);
  const look = (event: Event) => {
    event.preventDefault();
    const said = askedOf(typed.value, ledger, currency);
    errors.value = said.ok ? [] : said.refusal;
    if (said.ok) go(askedAddress(said.value), true);
    else attempt.value += 1;
  };
  const errorOf = (field: string) => errors.value.find((each) => each.field === field)?.words;
  return { typed, errors: errors.value, attempt: attempt.value, errorOf, look };
}

/** What was seen, place by place; looking for causes puts it into the address. */
export function SeenForm({ asked }: { readonly asked: Asked }) {
  const { typed, errors, attempt, errorOf, look } = useTyped(asked);
  const { day, places } = typed.value;
  const onDay = (to: string) => {
    typed.value = { ...typed.value, day: to };
  };
  return (
    <form class="why-form no-print" aria-label={say`What was seen`} noValidate onSubmit={look}>
      <ErrorSummary errors={errors} attempt={attempt} />
      <DayField
        label={say`At the end of`}
        name="day"
        hint={say`Only records up to this day count.`}
        error={errorOf('day')}
        value={day}
        onValue={onDay}
      />
      {Object.entries(places).map(([place, said], at) => (
        <SeenPlace
          key={place}
          place={place}
          day={isDay(day) ? day : asked.day}
          typed={said}
          mayAgree={at > 0}
          errorOf={errorOf}
          onTyped={(to) => {
            typed.value = { ...typed.value, places: { ...typed.value.places, [place]: to } };
          }}
        />
      ))}
      <p class="form-end">
        <Button kind="main" submit>
          {say`Look for causes`}
        </Button>
      </p>
    </form>
  );
}
