import { freeId } from '../../../intake/short-id.ts';
import { sellersOf } from '../../../questions/ordered-against-taken.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { languageOptions } from '../../parts/language-options.ts';
import { say } from '../../say.ts';
import { EditableList } from './editable-list.tsx';
import type { FieldSpec } from './fields-form.tsx';
import { Reading, replacing } from './reading.ts';

const FIELDS: readonly FieldSpec[] = [
  { name: 'name', label: say`Adult who answers for the account`, kind: 'text' },
  {
    name: 'contact',
    label: say`How to reach the adult`,
    kind: 'text',
    optional: true,
    hint: say`An adult’s telephone or e-mail, never a child’s.`,
  },
];

function languageField(written: readonly (string | undefined)[]): FieldSpec {
  return {
    name: 'language',
    label: say`Language of statements and receipts`,
    kind: 'select',
    options: languageOptions(...written),
    optional: true,
    empty: say`as the season has it`,
  };
}

/** Households, each with the adult who answers for the account. */
export function FamiliesPart() {
  const { ledger } = useBook();
  const { families } = ledger.setup;
  const rows = [...families.values()].sort((a, b) => (a.name < b.name ? -1 : 1));
  return (
    <EditableList
      spec={{
        caption: say`Families`,
        add: [say`Add a family`, say`Add the family`],
        none: say`No family yet. Paste a seller list, or add the first family.`,
        rows,
        columns: [
          { head: say`Adult`, cell: (row) => <a href={`/families/${row.family}`}>{row.name}</a> },
          {
            head: say`Sellers`,
            cell: (row) =>
              sellersOf(ledger, row.family)
                .map((seller) => sellerName(ledger.setup, seller))
                .join(say`, `),
          },
          { head: say`Language`, cell: (row) => languageName(row.language), wide: true },
          { head: say`Contact`, cell: (row) => row.contact ?? '', wide: true },
        ],
        keyOf: (row) => row.family,
        nameOf: (row) => row.name,
        fields: [...FIELDS, languageField(rows.map(({ language }) => language))],
        start: (row) => ({
          name: row?.name ?? '',
          contact: row?.contact ?? '',
          language: row?.language ?? '',
        }),
        read: (values, row) => {
          const reading = new Reading(values, row);
          const name = reading.text('name', say`Write the name of the adult.`);
          const contact = reading.optional('contact');
          const language = reading.optional('language');
          const lastWord = name.split(' ').at(-1) ?? '';
          const family = row?.family ?? freeId(lastWord, 'family', new Set(families.keys()));
          return reading.done({
            kind: 'family',
            family,
            name,
            ...(contact === '' ? {} : { contact }),
            ...(language === '' ? {} : { language }),
            ...replacing(row),
          });
        },
      }}
    />
  );
}

function languageName(tag: string | undefined): string {
  return languageOptions(tag).find(({ value }) => value === tag)?.words ?? '';
}
