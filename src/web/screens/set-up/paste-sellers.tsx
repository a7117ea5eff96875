import { useSignal } from '@preact/signals';
import {
  type PastedSeller,
  type ProposedSeller,
  proposeSellers,
  readPastedSellers,
} from '../../../intake/pasted-sellers.ts';
import { type Draft, useBook } from '../../book.ts';
import { say } from '../../say.ts';
import { PasteForm } from './paste-box.tsx';

const COLUMNS = [
  ['seller', say`Seller`],
  ['family', say`Family`],
  ['goal', say`Goal`],
] as const;

/** A seller list from a spreadsheet. */
export function PasteSellers() {
  const { families, sellers } = useBook().ledger.setup;
  const rows = useSignal<readonly PastedSeller[]>([]);
  const proposed = proposeSellers(rows.value, {
    families: [...families.values()],
    sellers: [...sellers.values()],
  });
  const made = draftsOf(proposed);
  return (
    <PasteForm
      label={say`Paste here`}
      hint={say`Seller, the adult of the family, and a goal if there is one. Tabs, commas or
        semicolons; a row of headings may be on top. Children by first name and initial only.`}
      rows={rows}
      read={readPastedSellers}
      proposed={proposed}
      columns={COLUMNS}
      becomes={({ seller, family }) => (
        <>
          {seller.name} ({seller.seller}),{' '}
          {family.isNew ? say`new family ${family.family}` : say`family ${family.family}`}
        </>
      )}
      kept={say`Only the seller, the family and the goal are taken over.`}
      drafts={made.records}
      save={say`Save ${say.count(made.sellers)`# seller|# sellers`} and
        ${say.count(made.families)`# new family|# new families`}`}
      to="/set-up/sellers"
    />
  );
}

/** Families before the sellers who belong to them. */
function draftsOf(proposed: readonly ProposedSeller[]) {
  const rows = proposed.filter((row) => row.state === 'new');
  const families = new Map(
    rows.filter((row) => row.family.isNew).map((row) => [row.family.family, row.family.name]),
  );
  const records: Draft[] = [...families].map(([family, name]) => ({
    kind: 'family',
    family,
    name,
  }));
  for (const { seller, family, goal } of rows) {
    records.push({
      kind: 'seller',
      seller: seller.seller,
      name: seller.name,
      family: family.family,
      active: true,
      ...(goal === undefined ? {} : { goal }),
    });
  }
  return { records, sellers: rows.length, families: families.size };
}
