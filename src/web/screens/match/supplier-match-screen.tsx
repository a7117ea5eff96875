import './match.css';
import '../../styles/tasks.css';
import { useBook } from '../../book.ts';
import { Page } from '../../parts/page.tsx';
import type { ColumnRole } from './columns-form.tsx';
import { StatementFile } from './statement-file.tsx';
import { SupplierResult } from './supplier-result.tsx';

const ROLES: readonly ColumnRole[] = [
  { name: 'date', label: 'Day', needed: true },
  { name: 'words', label: 'What it is, in words' },
  { name: 'product', label: 'Product' },
  { name: 'units', label: 'Units' },
  { name: 'cases', label: 'Cases' },
  { name: 'amount', label: 'Amount' },
  { name: 'charge', label: 'Charged' },
  { name: 'credit', label: 'Credited' },
  { name: 'reference', label: 'Slip or order number' },
  { name: 'neighbour', label: 'Other group' },
  { name: 'balance', label: 'Owed after it' },
];

/** The supplier's statement against the book, in three piles. */
export function SupplierMatchScreen() {
  const book = useBook();
  return (
    <Page
      title="Match the supplier"
      above={<a href="/places/supplier">Supplier</a>}
      lead="The supplier’s own list of deliveries, swaps and money, line by line against the book."
      actions={
        <a class="button button-plain" href="/match/bank">
          Bank’s statement
        </a>
      }
    >
      <StatementFile
        label="Statement from the supplier"
        hint="CSV, or the first sheet of an XLSX workbook."
        accept=".csv,.txt,.xlsx"
        roles={ROLES}
        read={async (file, typed) => {
          const { readSupplierChosen } = await import('./read-chosen.ts');
          return readSupplierChosen(file, book.currency, book.ledger.setup, typed);
        }}
      >
        {(file) => <SupplierResult file={file} />}
      </StatementFile>
    </Page>
  );
}
