import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { isDay } from '../../../base/day.ts';
import { useBook } from '../../book.ts';
import { go } from '../../navigation.ts';
import { Button } from '../../parts/button.tsx';
import { DayField } from '../../parts/field.tsx';
import { ErrorSummary, type FieldError } from '../../parts/notice.tsx';
import { type Asked, askedAddress, askedOf, typedOf } from './asked.ts';
import { SeenPlace } from './seen-place.tsx';

/** What was seen, place by place; looking for causes puts it into the address. */
export function SeenForm({ asked }: { readonly asked: Asked }) {
  const book = useBook();
  const { ledger, currency } = book;
  const first = useMemo(() => typedOf(asked, ledger, currency), []);
  const typed = useSignal(first);
  const errors = useSignal<readonly FieldError[]>([]);
  const attempt = useSignal(0);
  const errorOf = (field: string) => errors.value.find((each) => each.field === field)?.words;
  const look = () => {
    const said = askedOf(typed.value, ledger, currency);
    errors.value = said.ok ? [] : said.refusal;
    if (said.ok) go(askedAddress(said.value), true);
    else attempt.value += 1;
  };
  const { day, places } = typed.value;
  return (
    <form
      class="why-form no-print"
      aria-label="What was seen"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        look();
      }}
    >
      <ErrorSummary errors={errors.value} attempt={attempt.value} />
      <DayField
        label="At the end of"
        name="day"
        hint="Only records up to this day count."
        error={errorOf('day')}
        value={day}
        onValue={(to) => {
          typed.value = { ...typed.value, day: to };
        }}
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
          Look for causes
        </Button>
      </p>
    </form>
  );
}
