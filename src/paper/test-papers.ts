import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { testBook } from '../ledger/test-book.ts';
import { familyAccount } from '../questions/family-account.ts';
import { seasonProof } from '../questions/season-proof.ts';
import { countSheet } from '../statements/count-sheet.ts';
import { familyStatement } from '../statements/family-statement.ts';
import { goodsSlip } from '../statements/goods-slip.ts';
import type { Paper } from '../statements/paper.ts';
import { paymentReceipt } from '../statements/payment-receipt.ts';
import { seasonProofPaper } from '../statements/season-proof-paper.ts';
import { saysIn } from '../words/all-languages.ts';

/** Papers of a small made-up book for tests, and Debian's poppler to read PDFs back. */

const context = {
  says: saysIn,
  group: 'Wrenfield Young Rowers',
  asAt: '2027-04-18',
  ask: 'Jo Reyes',
};

/** A statement with a number of lines, for a family whose adult has any name and language. */
export function statementOf(adult: string, lines: number, language?: string): Paper {
  const book = testBook({ honey: 800, jam: 650 }, []);
  const setup = [
    book.setting('product', { product: 'honey', name: 'Wildflower honey', price: 800, case: 12 }),
    book.setting('family', { family: 'kept', name: adult, ...(language && { language }) }),
    book.setting('seller', { seller: 'ada', name: 'Ada K.', family: 'kept', active: true }),
  ];
  const records = Array.from({ length: lines }, (_, at) =>
    at % 3 === 2
      ? book.movement('payment', { seller: 'ada', tender: 'cash', cents: 2500, receipt: `A-${at}` })
      : book.movement('handover', {
          seller: 'ada',
          lines: { honey: at + 1, jam: 2 },
          slip: `S-${at}`,
        }),
  );
  const ledger = book.ledger([...setup, ...records]);
  const account = familyAccount(ledger, 'kept');
  if (!account.ok) throw new Error(account.refusal.name);
  return familyStatement(account.value, ledger, context);
}

/** One of every other paper. */
export function otherPapers(): Paper[] {
  const book = testBook({ honey: 800, jam: 650 }, ['ada']);
  const handover = book.movement('handover', { seller: 'ada', lines: { honey: 14, jam: 3 } });
  const payment = book.movement('payment', { seller: 'ada', tender: 'card', cents: 900 });
  const ledger = book.ledger([handover, payment]);
  const slip = goodsSlip(ledger, handover.id, context);
  const receipt = paymentReceipt(ledger, payment.id, context);
  const proof = seasonProof(ledger);
  if (!slip.ok || !receipt.ok || !proof.ok) throw new Error('a paper of the test book is refused');
  return [
    slip.value,
    receipt.value,
    countSheet(ledger, context),
    seasonProofPaper(proof.value, ledger, context),
  ];
}

/** The text of a PDF as pdftotext gives it back. */
export function textOfPdf(pdf: Uint8Array): string {
  return withFile(pdf, (file) => run('pdftotext', ['-layout', file, '-']));
}

/** The tag tree of a PDF as pdfinfo shows it. */
export function tagsOfPdf(pdf: Uint8Array): string {
  return withFile(pdf, (file) => run('pdfinfo', ['-struct', file]));
}

/** What pdfinfo says about a PDF as a whole. */
export function infoOfPdf(pdf: Uint8Array): string {
  return withFile(pdf, (file) => run('pdfinfo', [file]));
}

function run(program: string, args: readonly string[]): string {
  return execFileSync(program, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
}

function withFile<T>(bytes: Uint8Array, read: (file: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'paper-'));
  try {
    const file = join(folder, 'paper.pdf');
    writeFileSync(file, bytes);
    return read(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
