import { useState } from 'preact/hooks';
import type { RecordOf } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { moneyToType } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import { contentOf } from '../../undo.ts';
import { EditableList } from './editable-list.tsx';
import { type FieldSpec, FieldsForm } from './fields-form.tsx';
import { Reading, replacing } from './reading.ts';

type Step = RecordOf<'proceeds'>['steps'][number];

const BASIS: FieldSpec = {
  name: 'basis',
  label: say`The step is chosen by`,
  kind: 'select',
  options: [
    { value: 'average', words: say`credited units per active seller with at least one` },
    { value: 'total', words: say`all credited units together` },
  ],
};
const WAIVER: FieldSpec = {
  name: 'waiver',
  label: say`More for each unit where the group goes without prizes`,
  kind: 'money',
  optional: true,
};

/** How much of each credited unit the group keeps, by steps. */
export function ProceedsPart() {
  const { ledger, currency } = useBook();
  const [saved, setSaved] = useState(0);
  const { proceeds } = ledger.setup;
  const steps = [...(proceeds?.steps ?? [])].sort((a, b) => a.from - b.from);
  const withSteps = (kept: readonly Step[]) => ({
    ...(proceeds === undefined ? {} : contentOf(proceeds)),
    kind: 'proceeds' as const,
    basis: proceeds?.basis ?? ('average' as const),
    steps: [...kept],
    ...replacing(proceeds),
  });
  return (
    <>
      <EditableList
        spec={{
          caption: say`Steps`,
          add: [say`Add a step`, say`Add the step`],
          none: say`No step yet. Add the lowest one, from 0 units.`,
          rows: steps,
          columns: [
            { head: say`From units`, number: true, cell: (row) => row.from },
            {
              head: say`Proceeds for each unit`,
              number: true,
              cell: (row) => <Money minor={row.cents} plain />,
            },
          ],
          keyOf: (row) => String(row.from),
          nameOf: (row) => say`the step from ${row.from} units`,
          fields: [
            { name: 'from', label: say`From this many units`, kind: 'whole' },
            { name: 'cents', label: say`Proceeds for each unit`, kind: 'money' },
          ],
          start: (row) => ({
            from: row === undefined ? '' : String(row.from),
            cents: row === undefined ? '' : moneyToType(row.cents, currency),
          }),
          read: (values, row) => {
            const reading = new Reading(values);
            const from = reading.whole('from');
            const cents = reading.money('cents', currency);
            const others = steps.filter((step) => step.from !== row?.from && step.from !== from);
            return reading.done(withSteps([...others, { from, cents }]));
          },
          remove: (row) => [withSteps(steps.filter((step) => step.from !== row.from))],
        }}
      />
      {proceeds !== undefined && (
        <FieldsForm
          key={`terms-${saved}`}
          title={say`Terms`}
          fields={[BASIS, WAIVER]}
          start={{
            basis: proceeds.basis,
            waiver: proceeds.waiver ? moneyToType(proceeds.waiver.cents, currency) : '',
          }}
          read={(values) => {
            const reading = new Reading(values, proceeds);
            const basis = reading.optional('basis') === 'total' ? 'total' : 'average';
            const waived = reading.optional('waiver') !== '';
            const waiver = waived ? { waiver: { cents: reading.money('waiver', currency) } } : {};
            return reading.done({
              kind: 'proceeds',
              basis,
              steps: [...steps],
              ...waiver,
              replaces: proceeds.id,
            });
          }}
          submit={say`Save the terms`}
          onDone={() => setSaved(saved + 1)}
        />
      )}
    </>
  );
}
