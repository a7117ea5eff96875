import { useState } from 'preact/hooks';
import { bankingRules } from '../../../questions/debits/debit-mornings.ts';
import type { RecordOf } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import { type FieldSpec, FieldsForm } from './fields-form.tsx';
import { readHolidays } from './holidays-typed.ts';
import { Reading } from './reading.ts';

const FIELDS: readonly FieldSpec[] = [
  {
    name: 'holidays',
    label: say`Days without banks`,
    kind: 'long',
    optional: true,
    hint: say`One a line, like 2027-05-31. Weekends need not be listed. Ask your bank.`,
  },
  {
    name: 'cashDays',
    label: say`Cash is there after`,
    kind: 'whole',
    hint: say`Banking days from the day it is brought to the bank.`,
  },
  {
    name: 'chequeDays',
    label: say`A cheque hardly comes back after`,
    kind: 'whole',
    hint: say`Banking days from the deposit.`,
  },
  {
    name: 'cardDays',
    label: say`A card payout is there after`,
    kind: 'whole',
    hint: say`Banking days from the day it is sent.`,
  },
];

const DAYS_MOST = 60;

/** Which days banks book, and how long money is not yet safe: what a debit's morning goes by. */
export function BankingPart() {
  const { season } = useBook().ledger.setup;
  if (season === undefined) {
    return <p>{say.pieces`Set up the ${link('/set-up/season', say`season`)} first.`}</p>;
  }
  return (
    <>
      <p class="soft">
        {say.pieces`It decides what is safe on the morning of
          ${link('/match/debits', say`a debit`)}. What is filled in first is common practice; your
          bank’s own days go before it.`}
      </p>
      <BankingForm season={season} />
    </>
  );
}

function BankingForm({ season }: { readonly season: RecordOf<'season'> }) {
  const { ledger } = useBook();
  const [saved, setSaved] = useState(0);
  const { holidays, cashDays, chequeDays, cardDays } = bankingRules(ledger);
  // Of holidays that nobody chose, those before the season tell nothing.
  const listed = season.banking?.holidays ?? [...holidays].filter((day) => day >= season.starts);
  return (
    <FieldsForm
      key={`banking-${saved}`}
      title={say`The bank’s days`}
      fields={FIELDS}
      start={{
        holidays: listed.join('\n'),
        cashDays: String(cashDays),
        chequeDays: String(chequeDays),
        cardDays: String(cardDays),
      }}
      read={(values) => readBanking(new Reading(values, season), season)}
      submit={say`Save the bank’s days`}
      onDone={() => setSaved(saved + 1)}
    />
  );
}

function readBanking(reading: Reading, season: RecordOf<'season'>) {
  const read = readHolidays(reading.optional('holidays'));
  if (!read.ok) reading.refuse('holidays', read.refusal);
  const days = (field: 'cashDays' | 'chequeDays' | 'cardDays') => {
    const many = reading.whole(field);
    if (many > DAYS_MOST) reading.refuse(field, say`Write ${DAYS_MOST} days or fewer.`);
    return many;
  };
  const { name, currency, starts, ends } = season;
  return reading.done({
    kind: 'season',
    name,
    currency,
    starts,
    ends,
    banking: {
      holidays: read.ok ? read.value : [],
      cashDays: days('cashDays'),
      chequeDays: days('chequeDays'),
      cardDays: days('cardDays'),
    },
    replaces: season.id,
  });
}
