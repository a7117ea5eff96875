import './match.css';
import '../../styles/tasks.css';
import { useState } from 'preact/hooks';
import type { SupplierFile } from '../../../intake/supplier/supplier-file.ts';
import type { FileRefusal } from '../../../intake/table/file-refusal.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { type ColumnRole, ColumnsForm, type ColumnsTyped } from './columns-form.tsx';
import { type ChosenFile, FileZone } from './file-zone.tsx';
import { refusalWords } from './refusal-words.ts';
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

interface Read {
  readonly file: SupplierFile | undefined;
  readonly refusal: FileRefusal | undefined;
  readonly heads: readonly string[];
  readonly start: ColumnsTyped;
}

/** The supplier's statement against the book, in three piles. */
export function SupplierMatchScreen() {
  const book = useBook();
  const [chosen, setChosen] = useState<ChosenFile>();
  const [read, setRead] = useState<Read>();
  const [isSettingColumns, setSettingColumns] = useState(false);
  const readFile = async (file: ChosenFile, typed?: ColumnsTyped) => {
    const { readSupplierChosen } = await import('./read-chosen.ts');
    setChosen(file);
    const found = await readSupplierChosen(file, book.currency, book.ledger.setup, typed);
    setRead(found);
    setSettingColumns(found.file === undefined);
  };
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
      <FileZone
        label="Statement from the supplier"
        hint="CSV, or the first sheet of an XLSX workbook."
        accept=".csv,.txt,.xlsx"
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
      {read && read.heads.length > 0 && isSettingColumns && chosen && (
        <ColumnsForm
          key={read.heads.join()}
          heads={read.heads}
          roles={ROLES}
          start={read.start}
          onSaid={(typed) => void readFile(chosen, typed)}
        />
      )}
      {read?.file && <SupplierResult file={read.file} />}
    </Page>
  );
}
