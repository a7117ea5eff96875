import { freeId } from '../../../intake/short-id.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';
import { EditableList } from './editable-list.tsx';
import { Reading, replacing } from './reading.ts';

/** Children who sell: first name and initial, family, goal, and whether they still sell. */
export function SellersPart() {
  const { ledger } = useBook();
  const { families, sellers } = ledger.setup;
  const options = [...families.values()].map((family) => ({
    value: family.family,
    words: family.name,
  }));
  return (
    <EditableList
      spec={{
        caption: say`Sellers`,
        add: [say`Add a seller`, say`Add the seller`],
        none: say`No seller yet. Paste a seller list, or add a family and then its sellers.`,
        rows: [...sellers.values()].sort((a, b) => (a.name < b.name ? -1 : 1)),
        columns: [
          { head: say`Seller`, cell: (row) => row.name },
          { head: say`Family`, cell: (row) => families.get(row.family)?.name ?? say`no family` },
          { head: say`Goal`, number: true, cell: (row) => row.goal ?? '' },
          { head: say`Selling`, cell: (row) => (row.active ? say`yes` : say`not any more`) },
        ],
        keyOf: (row) => row.seller,
        nameOf: (row) => row.name,
        fields: [
          {
            name: 'name',
            label: say`First name and initial`,
            kind: 'text',
            hint: say`Like Ada L. Nothing else about a child is kept.`,
          },
          {
            name: 'family',
            label: say`Family`,
            kind: 'select',
            options,
            empty: say`Choose a family`,
          },
          { name: 'goal', label: say`Own goal, in units`, kind: 'whole', optional: true },
          { name: 'active', label: say`Still selling`, kind: 'check' },
        ],
        start: (row) => ({
          name: row?.name ?? '',
          family: row?.family ?? '',
          goal: row?.goal === undefined ? '' : String(row.goal),
          active: row === undefined || row.active ? 'yes' : '',
        }),
        read: (values, row) => {
          const reading = new Reading(values, row);
          const name = reading.text('name', say`Write the first name and initial.`);
          const family = reading.text('family', say`Choose the family.`);
          const goal = reading.optional('goal') === '' ? undefined : reading.whole('goal');
          const seller = row?.seller ?? freeId(name, 'seller', new Set(sellers.keys()));
          return reading.done({
            kind: 'seller',
            seller,
            name,
            family,
            active: reading.ticked('active'),
            ...(goal === undefined ? {} : { goal }),
            ...replacing(row),
          });
        },
      }}
    />
  );
}
