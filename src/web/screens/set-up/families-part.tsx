import { freeId } from '../../../intake/short-id.ts';
import { sellersOf } from '../../../questions/ordered-against-taken.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
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
  {
    name: 'language',
    label: say`Language of the statement`,
    kind: 'text',
    optional: true,
    hint: say`A language tag (BCP 47) like es or zh-Hans.`,
  },
];

const LANGUAGE = /^[A-Za-z]{2,8}(?:-[A-Za-z0-9]{1,8})*$/;

/** Households, each with the adult who answers for the account. */
export function FamiliesPart() {
  const { ledger } = useBook();
  const { families } = ledger.setup;
  return (
    <EditableList
      spec={{
        caption: say`Families`,
        add: [say`Add a family`, say`Add the family`],
        none: say`No family yet. Paste a seller list, or add the first family.`,
        rows: [...families.values()].sort((a, b) => (a.name < b.name ? -1 : 1)),
        columns: [
          { head: say`Adult`, cell: (row) => <a href={`/families/${row.family}`}>{row.name}</a> },
          {
            head: say`Sellers`,
            cell: (row) =>
              sellersOf(ledger, row.family)
                .map((seller) => sellerName(ledger.setup, seller))
                .join(', '),
          },
          { head: say`Language`, cell: (row) => row.language ?? '', wide: true },
          { head: say`Contact`, cell: (row) => row.contact ?? '', wide: true },
        ],
        keyOf: (row) => row.family,
        nameOf: (row) => row.name,
        fields: FIELDS,
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
          if (language !== '' && !LANGUAGE.test(language)) {
            reading.refuse('language', say`Write a language tag like es or zh-Hans, or nothing.`);
          }
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
