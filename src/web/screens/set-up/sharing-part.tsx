import { useState } from 'preact/hooks';
import { liftAllowed } from '../../../questions/share/lift-allowed.ts';
import type { RecordOf } from '../../../records/record.ts';
import { liftAllowedWords, liftWhy } from '../../../statements/lift-words.ts';
import { useBook } from '../../book.ts';
import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import { FairnessTable } from '../share/fairness-table.tsx';
import { type FieldSpec, FieldsForm } from './fields-form.tsx';
import { Reading } from './reading.ts';

const FIELDS: readonly FieldSpec[] = [
  {
    name: 'weights',
    label: say`A stall’s units are shared by`,
    kind: 'select',
    options: [
      { value: 'minutes', words: say`minutes worked` },
      { value: 'even', words: say`evenly among those who worked` },
    ],
    hint: say`Posted orders and gift units go evenly to all active sellers.`,
  },
  {
    name: 'method',
    label: say`Rule for whole units`,
    kind: 'select',
    options: [
      { value: 'remainder', words: say`nearest to due, carried on` },
      { value: 'divisor', words: say`divisor rule, each pool alone` },
      { value: 'rota', words: say`one by one in turn` },
    ],
    hint: say`Nearest to due: what rounding took from a seller in one share-out comes back in a
      later one, so that nobody is always the one who is rounded down.`,
  },
  {
    name: 'lift',
    label: say`Pools may go where they reach goals and prize steps`,
    kind: 'check',
    hint: liftWhy(say),
  },
];

/** How pooled credit is shared: the group's own rule, decided once and before the first stall. */
export function SharingPart() {
  const { ledger } = useBook();
  const { season } = ledger.setup;
  if (season === undefined) {
    return <p>{say.pieces`Set up the ${link('/set-up/season', say`season`)} first.`}</p>;
  }
  return (
    <>
      <SharingForm season={season} />
      <p class="soft">{liftAllowedWords(liftAllowed(ledger), say)}</p>
      <FairnessTable />
      <p class="soft">{say`Credit counts towards prizes and is never money.`}</p>
    </>
  );
}

function SharingForm({ season }: { readonly season: RecordOf<'season'> }) {
  const [saved, setSaved] = useState(0);
  const { weights = 'minutes', method = 'remainder', lift = false } = season.sharing ?? {};
  return (
    <FieldsForm
      key={`sharing-${saved}`}
      title={say`Sharing rule`}
      fields={FIELDS}
      start={{ weights, method, lift: lift ? 'yes' : '' }}
      read={(values) => {
        const reading = new Reading(values, season);
        const rule = reading.optional('method');
        const { name, currency, starts, ends } = season;
        return reading.done({
          kind: 'season',
          name,
          currency,
          starts,
          ends,
          sharing: {
            weights: reading.optional('weights') === 'even' ? 'even' : 'minutes',
            method: rule === 'divisor' || rule === 'rota' ? rule : 'remainder',
            lift: reading.ticked('lift'),
          },
          replaces: season.id,
        });
      }}
      submit={say`Save the sharing rule`}
      onDone={() => setSaved(saved + 1)}
    />
  );
}
