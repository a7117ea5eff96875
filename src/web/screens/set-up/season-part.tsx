import { useState } from 'preact/hooks';
import { freeId } from '../../../intake/short-id.ts';
import type { RecordOf } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { languageOptions } from '../../parts/language-options.ts';
import { moneyToType } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import { contentOf } from '../../undo.ts';
import { EditableList } from './editable-list.tsx';
import { type FieldSpec, FieldsForm } from './fields-form.tsx';
import { Reading, replacing } from './reading.ts';

type Deadline = NonNullable<RecordOf<'season'>['deadlines']>[number];

const FIELDS: readonly FieldSpec[] = [
  { name: 'name', label: say`Name of the season`, kind: 'text' },
  {
    name: 'currency',
    label: say`Currency`,
    kind: 'text',
    hint: say`Its three letters (ISO 4217). Do not change it once money is recorded.`,
  },
  { name: 'starts', label: say`First day`, kind: 'day' },
  { name: 'ends', label: say`Last day`, kind: 'day' },
  { name: 'group', label: say`Name of the group on papers`, kind: 'text', optional: true },
  {
    name: 'ask',
    label: say`Whom families can ask about a paper`,
    kind: 'text',
    optional: true,
    hint: say`An adult of the group who is not the treasurer.`,
  },
  {
    name: 'language',
    label: say`Language of papers`,
    kind: 'select',
    options: languageOptions(),
    optional: true,
    empty: say`not chosen: English`,
    hint: say`A family’s own language goes before it.`,
  },
];

/** Name, currency, days and deadlines of the season. */
export function SeasonPart() {
  const { ledger } = useBook();
  const { season } = ledger.setup;
  const [saved, setSaved] = useState(0);
  return (
    <>
      <FieldsForm
        key={`season-${saved}`}
        title={say`Season`}
        fields={FIELDS}
        start={{
          name: season?.name ?? '',
          currency: season?.currency ?? 'USD',
          starts: season?.starts ?? '',
          ends: season?.ends ?? '',
          group: season?.group ?? '',
          ask: season?.ask ?? '',
          language: season?.language ?? '',
        }}
        read={(values) => {
          const reading = new Reading(values, season);
          const currency = reading.optional('currency').toUpperCase();
          const name = reading.text('name', say`Name the season.`);
          const starts = reading.day('starts');
          const ends = reading.day('ends');
          if (!/^[A-Z]{3}$/.test(currency)) {
            reading.refuse('currency', say`Write the three letters of a currency, like USD.`);
          }
          if (ends < starts) reading.refuse('ends', say`The last day is before the first.`);
          const group = reading.optional('group');
          const ask = reading.optional('ask');
          const language = reading.optional('language');
          return reading.done({
            kind: 'season',
            name,
            currency,
            starts,
            ends,
            ...(group === '' ? {} : { group }),
            ...(ask === '' ? {} : { ask }),
            ...(language === '' ? {} : { language }),
            ...replacing(season),
          });
        }}
        submit={say`Save the season`}
        onDone={() => setSaved(saved + 1)}
      />
      {season !== undefined && <Deadlines season={season} />}
    </>
  );
}

/** Dates that must not be missed; each change is a new version of the season. */
function Deadlines({ season }: { readonly season: RecordOf<'season'> }) {
  const deadlines = [...(season.deadlines ?? [])].sort((a, b) => (a.date < b.date ? -1 : 1));
  const withDeadlines = (kept: readonly Deadline[]) => ({
    ...contentOf(season),
    kind: 'season' as const,
    name: season.name,
    currency: season.currency,
    starts: season.starts,
    ends: season.ends,
    deadlines: [...kept],
    replaces: season.id,
  });
  const others = (row: Deadline | undefined) =>
    deadlines.filter(({ deadline }) => deadline !== row?.deadline);
  return (
    <EditableList
      spec={{
        caption: say`Deadlines`,
        add: [say`Add a deadline`, say`Add the deadline`],
        none: say`No deadline yet. Add the days on which orders, swaps and money are due.`,
        rows: deadlines,
        columns: [
          { head: say`Day`, cell: (row) => say.day(row.date) },
          { head: say`What is due`, cell: (row) => row.name },
          {
            head: say`Debit announced`,
            number: true,
            cell: ({ announced }) => announced !== undefined && <Money minor={announced} plain />,
          },
        ],
        keyOf: (row) => row.deadline,
        nameOf: (row) => row.name,
        fields: [
          // Other names than the season's own fields, whose form stands on the same page.
          { name: 'due', label: say`What is due`, kind: 'text' },
          { name: 'due-day', label: say`Day`, kind: 'day' },
          {
            name: 'announced',
            label: say`Amount that the supplier said it will take`,
            kind: 'money',
            optional: true,
            hint: say`Only for the day of a debit.`,
          },
        ],
        start: (row) => ({
          due: row?.name ?? '',
          'due-day': row?.date ?? '',
          announced:
            row?.announced === undefined ? '' : moneyToType(row.announced, season.currency),
        }),
        read: (values, row) => {
          const reading = new Reading(values);
          const name = reading.text('due', say`Write what is due.`);
          const date = reading.day('due-day');
          const taken = new Set(deadlines.map(({ deadline }) => deadline));
          const deadline = row?.deadline ?? freeId(name, 'deadline', taken);
          const said = reading.optional('announced') !== '';
          const announced = said ? reading.money('announced', season.currency) : undefined;
          const { announced: _before, ...kept } = row ?? {};
          const amount = announced === undefined ? {} : { announced };
          const now = { ...kept, deadline, name, date, ...amount };
          return reading.done(withDeadlines([...others(row), now]));
        },
        remove: (row) => [withDeadlines(others(row))],
      }}
    />
  );
}
