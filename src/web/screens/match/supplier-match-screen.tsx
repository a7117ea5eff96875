import { say } from '../../say.ts';
import './match.css';
import '../../styles/tasks.css';
import { useBook } from '../../book.ts';
import { Page } from '../../parts/page.tsx';
import type { ColumnRole } from './columns-form.tsx';
import { StatementFile } from './statement-file.tsx';
import { SupplierResult } from './supplier-result.tsx';

const ROLES: readonly ColumnRole[] = [
  { name: 'date', label: say`Day`, needed: true },
  { name: 'words', label: say`What it is, in words` },
  { name: 'product', label: say`Product` },
  { name: 'units', label: say`Units` },
  { name: 'cases', label: say`Cases` },
  { name: 'amount', label: say`Amount` },
  { name: 'charge', label: say`Charged` },
  { name: 'credit', label: say`Credited` },
  { name: 'reference', label: say`Slip or order number` },
  { name: 'neighbour', label: say`Other group` },
  { name: 'balance', label: say`Owed after it` },
];

/** The supplier's statement against the book, in three piles. */
export function SupplierMatchScreen() {
  const book = useBook();
  return (
    <Page
      title={say`Match the supplier`}
      above={<a href="/places/supplier">{say`Supplier`}</a>}
      lead={say`The supplier’s own list of deliveries, swaps and money, line by line against the
        book.`}
      actions={
        <a class="button button-plain" href="/match/bank">
          {say`Bank’s statement`}
        </a>
      }
    >
      <StatementFile
        label={say`Statement from the supplier`}
        hint={say`CSV, or the first sheet of an XLSX workbook.`}
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
