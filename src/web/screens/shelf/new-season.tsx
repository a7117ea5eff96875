import { useSignal } from '@preact/signals';
import { useMemo, useRef } from 'preact/hooks';
import { isDay } from '../../../base/day.ts';
import type { Draft } from '../../draft.ts';
import { Button } from '../../parts/button.tsx';
import { DayField, TextField } from '../../parts/field.tsx';
import { Later } from '../../parts/later.tsx';
import { ErrorSummary, type FieldError } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import type { PastedPrices, priceList } from '../set-up/price-list.tsx';

/** Four questions before an empty season: group, season and its days, currency, what is sold. */
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
  /** @param products what is sold, where a price list was pasted */
  readonly onStart: (answers: SeasonAnswers, products: readonly Draft[]) => void;
}) {
  const typed = useSignal<SeasonAnswers>({
    group: '',
    season: '',
    currency: 'USD',
    starts: props.today,
    ends: '',
  });
  const tries = useSignal(0);
  const prices = usePriceList(() => currencyOf(typed.value));
  const wrong = [...wrongAnswers(typed.value), ...prices.list.errors];
  const errors = tries.value === 0 ? [] : wrong;
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
    if (wrong.length > 0) return;
    props.onStart({ ...typed.value, currency: currencyOf(typed.value) }, prices.list.drafts);
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
      <div class="side-by-side">
        <DayField label={say`First day`} {...field('starts')} />
        <DayField label={say`Last day`} {...field('ends')} />
      </div>
      <TextField
        label={say`Which currency is the money in?`}
        hint={say`Its three letters (ISO 4217), like USD, EUR or GBP. It stays for the whole
          season.`}
        {...field('currency')}
      />
      <Later load={prices.question} />
      <Button kind="main" submit disabled={props.busy}>
        {say`Start an empty season`}
      </Button>
    </form>
  );
}

const NO_LIST: ReturnType<typeof priceList> = { drafts: [], errors: [] };

/** The last question, fetched as the page is there, and what was pasted into it so far. */
function usePriceList(currency: () => string) {
  const rows: PastedPrices = useSignal([]);
  const read = useRef<typeof priceList>(() => NO_LIST);
  const question = useMemo(
    () => async () => {
      const { PriceListQuestion, priceList } = await import('../set-up/price-list.tsx');
      read.current = priceList;
      return () => <PriceListQuestion rows={rows} currency={currency()} />;
    },
    [],
  );
  return { question, list: read.current(rows.value, currency()) };
}

function currencyOf(typed: SeasonAnswers): string {
  return typed.currency.trim().toUpperCase();
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
