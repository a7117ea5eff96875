import { freeId } from '../../../intake/short-id.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';
import { EditableList } from './editable-list.tsx';
import { Reading, removalOf, replacing } from './reading.ts';

/** What credited units earn, and where the seller has to choose. */
export function PrizeStepsPart() {
  const { ledger } = useBook();
  const { levels } = ledger.setup;
  return (
    <EditableList
      spec={{
        caption: say`Prize steps, lowest first`,
        add: [say`Add a prize step`, say`Add the prize step`],
        none: say`No prize step yet. Add the lowest one first.`,
        rows: [...levels.values()].sort((a, b) => a.units - b.units),
        columns: [
          { head: say`Prize`, cell: (row) => row.prize },
          { head: say`Units`, number: true, cell: (row) => row.units },
          { head: say`Choices`, cell: (row) => row.choices?.join(', ') ?? '' },
          {
            head: say`With lower steps`,
            cell: (row) => (row.each === false ? say`in their place` : say`on top of them`),
            wide: true,
          },
        ],
        keyOf: (row) => row.level,
        nameOf: (row) => row.prize,
        fields: [
          { name: 'units', label: say`Credited units that earn it`, kind: 'whole' },
          { name: 'prize', label: say`Prize`, kind: 'text' },
          {
            name: 'choices',
            label: say`Choices`,
            kind: 'text',
            optional: true,
            hint: say`Sizes, colours or things to pick from, with commas: S, M, L.`,
          },
          {
            name: 'each',
            label: say`It takes the place of the lower steps`,
            kind: 'check',
            hint: say`Otherwise it is earned on top of them.`,
          },
        ],
        start: (row) => ({
          units: row === undefined ? '' : String(row.units),
          prize: row?.prize ?? '',
          choices: row?.choices?.join(', ') ?? '',
          each: row?.each === false ? 'yes' : '',
        }),
        read: (values, row) => {
          const reading = new Reading(values, row);
          const units = reading.whole('units');
          const prize = reading.text('prize', say`Write what the prize is.`);
          const choices = reading
            .optional('choices')
            .split(',')
            .map((choice) => choice.trim())
            .filter((choice) => choice !== '');
          const level = row?.level ?? freeId(`${units} ${prize}`, 'step', new Set(levels.keys()));
          return reading.done({
            kind: 'level',
            level,
            units,
            prize,
            ...(choices.length === 0 ? {} : { choices }),
            ...(reading.ticked('each') ? { each: false } : {}),
            ...replacing(row),
          });
        },
        remove: (row) => removalOf(ledger, row),
      }}
    />
  );
}
