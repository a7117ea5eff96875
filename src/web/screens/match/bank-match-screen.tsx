import { say } from '../../say.ts';
import './match.css';
import '../../styles/tasks.css';
import { useBook } from '../../book.ts';
import { ClosedNotice } from '../../parts/closed-season.tsx';
import { Page } from '../../parts/page.tsx';
import { BankResult } from './bank-result.tsx';
import type { ColumnRole } from './columns-form.tsx';
import { StatementFile } from './statement-file.tsx';

const ROLES: readonly ColumnRole[] = [
  { name: 'date', label: say`Day`, needed: true },
  { name: 'amount', label: say`Amount, with sign` },
  { name: 'paidIn', label: say`Money in` },
  { name: 'paidOut', label: say`Money out` },
  { name: 'direction', label: say`In or out, as a word` },
  { name: 'text', label: say`Words` },
  { name: 'reference', label: say`Reference` },
  { name: 'balance', label: say`Balance after it` },
];

/** The bank's statement against the book: a file, then what agrees and what is left. */
export function BankMatchScreen() {
  const book = useBook();
  return (
    <Page
      title={say`Match the bank`}
      above={<a href="/places/bank">{say`Bank`}</a>}
      lead={say`The bank’s own list of what came in and went out, line by line against the book.`}
      actions={<Actions />}
    >
      <ClosedNotice />
      <StatementFile
        label={say`Statement from the bank`}
        hint={say`OFX, camt.053 or CSV, as the bank gives it.`}
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
        {say`Debits`}
      </a>
      <a class="button button-plain" href="/match/reconciliation">
        {say`Reconciliation`}
      </a>
      <a class="button button-plain" href="/match/supplier">
        {say`Supplier’s statement`}
      </a>
    </>
  );
}
