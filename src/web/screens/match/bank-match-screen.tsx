import './match.css';
import '../../styles/tasks.css';
import { useState } from 'preact/hooks';
import type { BankFile } from '../../../intake/bank/bank-file.ts';
import type { FileRefusal } from '../../../intake/table/file-refusal.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { ClosedNotice } from '../../parts/closed-season.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { BankResult } from './bank-result.tsx';
import { type ColumnRole, ColumnsForm, type ColumnsTyped } from './columns-form.tsx';
import { type ChosenFile, FileZone } from './file-zone.tsx';
import { refusalWords } from './refusal-words.ts';

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

/** What is read of the file, and the table's columns where it is a CSV. */
interface Read {
  readonly file: BankFile | undefined;
  readonly refusal: FileRefusal | undefined;
  readonly heads: readonly string[];
  readonly start: ColumnsTyped;
}

/** The bank's statement against the book: a file, then what agrees and what is left. */
export function BankMatchScreen() {
  const book = useBook();
  const [chosen, setChosen] = useState<ChosenFile>();
  const [read, setRead] = useState<Read>();
  const [isSettingColumns, setSettingColumns] = useState(false);
  const readFile = async (file: ChosenFile, typed?: ColumnsTyped) => {
    const { readBankChosen } = await import('./read-chosen.ts');
    setChosen(file);
    const found = readBankChosen(file, book.currency, typed);
    setRead(found);
    setSettingColumns(found.file === undefined);
  };
  const showsColumns = read !== undefined && read.heads.length > 0 && isSettingColumns;
  return (
    <Page
      title="Match the bank"
      above={<a href="/places/bank">Bank</a>}
      lead={<Lead name={chosen?.name} />}
      actions={<Actions />}
    >
      <ClosedNotice />
      <FileZone
        label="Statement from the bank"
        hint="OFX, camt.053 or CSV, as the bank gives it."
        accept=".ofx,.qfx,.xml,.csv,.txt"
        onFile={(file) => void readFile(file)}
      />
      {read?.refusal && chosen && (
        <Notice tone="stop" title="Nothing of this file was taken.">
          <p>{refusalWords(read.refusal, chosen.name)}</p>
        </Notice>
      )}
      {read && read.heads.length > 0 && !isSettingColumns && (
        <p class="no-print">
          <Button quiet onClick={() => setSettingColumns(true)}>
            Look over the columns
          </Button>
        </p>
      )}
      {showsColumns && chosen && (
        <ColumnsForm
          key={read.heads.join()}
          heads={read.heads}
          roles={ROLES}
          start={read.start}
          onSaid={(typed) => void readFile(chosen, typed)}
        />
      )}
      {read?.file && <BankResult file={read.file} />}
    </Page>
  );
}

function Lead({ name }: { readonly name: string | undefined }) {
  if (name !== undefined) return <>{name}, line by line against the book.</>;
  return <>The bank’s own list of what came in and went out, line by line against the book.</>;
}

function Actions() {
  return (
    <>
      <a class="button button-plain" href="/match/reconciliation">
        Reconciliation
      </a>
      <a class="button button-plain" href="/match/supplier">
        Supplier’s statement
      </a>
    </>
  );
}
