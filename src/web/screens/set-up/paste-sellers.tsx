import { useState } from 'preact/hooks';
import { done } from '../../../base/outcome.ts';
import {
  type PastedRow,
  type ProposedRow,
  proposeSellers,
  readPastedSellers,
} from '../../../intake/pasted-sellers.ts';
import { type Draft, useBook } from '../../book.ts';
import { go } from '../../navigation.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { TextField } from '../../parts/field.tsx';
import { ErrorSummary, Notice } from '../../parts/notice.tsx';
import { useSaving } from '../../parts/saving.ts';
import { say } from '../../say.ts';
import { PastePreview } from './paste-preview.tsx';

const HINT = say`Seller, the adult of the family, and a goal if there is one. Tabs, commas or
  semicolons; a row of headings may be on top. Children by first name and initial only.`;

/** A seller list from a spreadsheet: paste, see what it becomes, fix in place, save at once. */
export function PasteSellers() {
  const { ledger } = useBook();
  const { families, sellers } = ledger.setup;
  const closed = useClosed();
  const [text, setText] = useState('');
  const [rows, setRows] = useState<readonly PastedRow[]>([]);
  const [notKept, setNotKept] = useState<readonly string[]>([]);
  const saving = useSaving();
  const read = (pasted: string) => {
    setText(pasted);
    const found = readPastedSellers(pasted);
    setRows(found.rows);
    setNotKept(found.notKept);
  };
  const proposed = proposeSellers(rows, {
    families: [...families.values()],
    sellers: [...sellers.values()],
  });
  const drafts = draftsOf(proposed);
  const toFix = proposed.filter((row) => row.state === 'fix').length;
  if (closed !== undefined) return null;
  return (
    <>
      <TextField
        label={say`Paste here`}
        name="pasted"
        hint={HINT}
        long
        value={text}
        onValue={read}
      />
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      {notKept.length > 0 && (
        <Notice title={say`Not kept: ${notKept.join(say`, `)}.`}>
          <p>{say`Only the seller, the family and the goal are taken over.`}</p>
        </Notice>
      )}
      {rows.length === 0 && (
        <p class="none">{say`What it becomes is shown here first; nothing is saved before you say
          so.`}</p>
      )}
      {rows.length > 0 && (
        <>
          <PastePreview
            proposed={proposed}
            onCells={(cells) => setRows(rows.map((row) => (row.line === cells.line ? cells : row)))}
            onLeaveOut={(line) => setRows(rows.filter((row) => row.line !== line))}
          />
          <div class="form-end">
            <Button
              kind="main"
              disabled={saving.busy || toFix > 0 || drafts.sellers === 0}
              onClick={() => void saving.save(done(drafts.records), () => go('/set-up/sellers'))}
            >
              {say`Save ${say.count(drafts.sellers)`# seller|# sellers`} and
                ${say.count(drafts.families)`# new family|# new families`}`}
            </Button>
            {toFix > 0 && (
              <span class="soft">{say.count(
                toFix,
              )`# row to fix first, or leave out.|# rows to fix first, or leave out.`}</span>
            )}
          </div>
        </>
      )}
    </>
  );
}

/** Families before the sellers who belong to them. */
function draftsOf(proposed: readonly ProposedRow[]) {
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
