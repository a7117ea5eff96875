import { useSignal } from '@preact/signals';
import { isDay } from '../../../base/day.ts';
import { Button } from '../../parts/button.tsx';
import { DayField, TextField } from '../../parts/field.tsx';
import { ErrorSummary, type FieldError } from '../../parts/notice.tsx';
import { say } from '../../say.ts';

/** Four questions before an empty season: group, season, currency, first and last day. */
export interface SeasonAnswers {
  readonly group: string;
  readonly season: string;
  readonly currency: string;
  readonly starts: string;
  readonly ends: string;
}

export function NewSeason(props: {
  readonly today: string;
  readonly busy: boolean;
  readonly onStart: (answers: SeasonAnswers) => void;
}) {
  const typed = useSignal<SeasonAnswers>({
    group: '',
    season: '',
    currency: 'USD',
    starts: props.today,
    ends: '',
  });
  const tries = useSignal(0);
  const errors = tries.value === 0 ? [] : wrongAnswers(typed.value);
  const field = (name: keyof SeasonAnswers) => ({
    name,
    value: typed.value[name],
    error: errors.find((error) => error.field === name)?.words,
    onValue: (value: string) => {
      typed.value = { ...typed.value, [name]: value };
    },
  });
  const start = (event: SubmitEvent) => {
    event.preventDefault();
    tries.value += 1;
    if (wrongAnswers(typed.value).length === 0) {
      props.onStart({ ...typed.value, currency: typed.value.currency.trim().toUpperCase() });
    }
  };
  return (
    <form onSubmit={start} noValidate>
      <ErrorSummary errors={errors} attempt={tries.value} />
      <TextField label={say`What is the group called?`} {...field('group')} />
      <TextField
        label={say`What is the season called?`}
        hint={say`Like Spring 2027.`}
        {...field('season')}
      />
      <TextField
        label={say`Which currency is the money in?`}
        hint={say`Its three letters (ISO 4217), like USD, EUR or GBP. It stays for the whole
          season.`}
        {...field('currency')}
      />
      <div class="side-by-side">
        <DayField label={say`First day`} {...field('starts')} />
        <DayField label={say`Last day`} {...field('ends')} />
      </div>
      <Button kind="main" submit disabled={props.busy}>
        {say`Start an empty season`}
      </Button>
    </form>
  );
}

function wrongAnswers(typed: SeasonAnswers): FieldError[] {
  const errors: FieldError[] = [];
  if (typed.group.trim() === '')
    errors.push({ field: 'group', words: say`Write the group’s name.` });
  if (typed.season.trim() === '') errors.push({ field: 'season', words: say`Name the season.` });
  if (!/^[A-Za-z]{3}$/.test(typed.currency.trim())) {
    errors.push({
      field: 'currency',
      words: say`Write the three letters of a currency, like USD.`,
    });
  }
  if (!isDay(typed.starts)) errors.push({ field: 'starts', words: say`Choose the first day.` });
  if (!isDay(typed.ends)) errors.push({ field: 'ends', words: say`Choose the last day.` });
  else if (typed.ends < typed.starts) {
    errors.push({
      field: 'ends',
      words: say`The last day is before the first: choose a later one.`,
    });
  }
  return errors;
}
