import './match.css';
import '../../styles/tasks.css';
import { useBook } from '../../book.ts';
import { ClosedNotice } from '../../parts/closed-season.tsx';
import { Page } from '../../parts/page.tsx';
import { BankResult } from './bank-result.tsx';
import type { ColumnRole } from './columns-form.tsx';
import { StatementFile } from './statement-file.tsx';

const ROLES: readonly ColumnRole[] = [
  { name: 'date', label: 'Day', needed: true },
  { name: 'amount', label: 'Amount, with sign' },
  { name: 'paidIn', label: 'Money in' },
  { name: 'paidOut', label: 'Money out' },
  { name: 'direction', label: 'In or out, as a word' },
  { name: 'text', label: 'Words' },
  { name: 'reference', label: 'Reference' },
  { name: 'balance', label: 'Balance after it' },
];

/** The bank's statement against the book: a file, then what agrees and what is left. */
export function BankMatchScreen() {
  const book = useBook();
  return (
    <Page
      title="Match the bank"
      above={<a href="/places/bank">Bank</a>}
      lead="The bank’s own list of what came in and went out, line by line against the book."
      actions={<Actions />}
    >
      <ClosedNotice />
      <StatementFile
        label="Statement from the bank"
        hint="OFX, camt.053 or CSV, as the bank gives it."
        accept=".ofx,.qfx,.xml,.csv,.txt"
        roles={ROLES}
        read={async (file, typed) => {
          const { readBankChosen } = await import('./read-chosen.ts');
          return readBankChosen(file, book.currency, typed);
        }}
      >
        {(file) => <BankResult file={file} />}
      </StatementFile>
    </Page>
  );
}

function Actions() {
  return (
    <>
      <a class="button button-plain" href="/match/debits">
        Debits
      </a>
      <a class="button button-plain" href="/match/reconciliation">
        Reconciliation
      </a>
      <a class="button button-plain" href="/match/supplier">
        Supplier’s statement
      </a>
    </>
  );
}
