import { byText } from '../base/order.ts';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { papersTogether, TOGETHER_MAX } from '../paper/paper-batch.ts';
import { paperPdf } from '../paper/paper-pdf.ts';
import type { PaperSize, Printed } from '../paper/paper-printer.ts';
import { familyAccount, familyAccounts } from '../questions/family-account.ts';
import { seasonProof } from '../questions/season-proof.ts';
import { countSheet } from '../statements/count-sheet.ts';
import { familyStatement, statementsCover } from '../statements/family-statement.ts';
import { goodsSlip } from '../statements/goods-slip.ts';
import { handOutPaper } from '../statements/hand-out-paper.ts';
import { hostReportPaper } from '../statements/host-report-paper.ts';
import type { Paper } from '../statements/paper.ts';
import { type PaperContext, paperContext } from '../statements/paper-frame.ts';
import { paymentReceipt } from '../statements/payment-receipt.ts';
import { prizeOrderPaper } from '../statements/prize-order-paper.ts';
import { refundReceipt } from '../statements/refund-receipt.ts';
import { seasonProofPaper } from '../statements/season-proof-paper.ts';
import { stallSheetPaper } from '../statements/stall-sheet-paper.ts';
import { saysIn } from '../words/all-languages.ts';
import { type Problem, problem } from './problem.ts';

/** The papers that can be asked for, by the name they have in the address. */
type MakePaper = (
  ledger: Ledger,
  about: string,
  context: PaperContext,
) => Outcome<Paper, { readonly name: string }>;

const papers: Readonly<Record<string, MakePaper>> = {
  statement: (ledger, about, context) => {
    const account = familyAccount(ledger, about, context.asAt);
    return account.ok ? done(familyStatement(account.value, ledger, context)) : account;
  },
  'goods-slip': goodsSlip,
  'payment-receipt': paymentReceipt,
  'refund-receipt': refundReceipt,
  'count-sheet': (ledger, _about, context) => done(countSheet(ledger, context)),
  'season-proof': (ledger, _about, context) => {
    const proof = seasonProof(ledger, context.asAt);
    return proof.ok ? done(seasonProofPaper(proof.value, ledger, context)) : proof;
  },
  'prize-order': (ledger, _about, context) => done(prizeOrderPaper(ledger, context)),
  'hand-out-list': (ledger, _about, context) => done(handOutPaper(ledger, context)),
  'host-report': hostReportPaper,
  'stall-sheet': stallSheetPaper,
};

export interface AskedPaper {
  readonly name: string;
  /** A family, host shop, stall or the id of a record; empty for papers about the whole book. */
  readonly about: string;
  readonly size: PaperSize;
  /** The book's short name of its group. */
  readonly group: string;
  /** The day it is made on. */
  readonly today: string;
}

export interface PrintedFile {
  readonly pdf: Uint8Array<ArrayBuffer>;
  readonly fileName: string;
}

/** The name of all statements in one PDF, each family on sheets of its own. */
const ALL_STATEMENTS = 'statements';

/** A paper as a tagged PDF. */
export async function printPaper(
  ledger: Ledger,
  asked: AskedPaper,
): Promise<Outcome<PrintedFile, Problem>> {
  // What is keyed for a day ahead is on the paper too, and the paper says so.
  const days = [asked.today, ledger.movements().at(-1)?.date ?? asked.today];
  const asAt = days.sort(byText).at(-1) ?? asked.today;
  const context = paperContext(ledger, asked, asAt, saysIn);
  if (asked.name === ALL_STATEMENTS && asked.about === '') {
    return allStatements(ledger, context, asked.size);
  }
  const make = Object.hasOwn(papers, asked.name) ? papers[asked.name] : undefined;
  if (make === undefined) {
    const names = [...Object.keys(papers), ALL_STATEMENTS].join(', ');
    return refused(problem('no_such_paper', `There is no such paper. There are: ${names}.`));
  }
  const paper = make(ledger, asked.about, context);
  if (!paper.ok) return refused(notMade(paper.refusal));
  const printed = await paperPdf(paper.value, { size: asked.size });
  return fileOf(printed, paper.value.fileName);
}

async function allStatements(
  ledger: Ledger,
  context: PaperContext,
  size: PaperSize,
): Promise<Outcome<PrintedFile, Problem>> {
  const accounts = familyAccounts(ledger, context.asAt);
  if (!accounts.ok) return refused(notMade(accounts.refusal));
  const statements = [...accounts.value.values()].map((account) =>
    familyStatement(account, ledger, context),
  );
  if (statements.length === 0) {
    return refused(problem('no_such_paper', 'There is no family yet. Add one, then print.'));
  }
  if (statements.length > TOGETHER_MAX) {
    const message =
      `More than ${TOGETHER_MAX} families are too many for one file here. ` +
      'Print them with: cratebook statements BOOK --together FILE.';
    return refused(problem('no_such_paper', message));
  }
  const cover = statementsCover(ledger, context);
  const [printed] = await papersTogether(statements, { size, ...cover, fileName: ALL_STATEMENTS });
  return fileOf(printed, ALL_STATEMENTS);
}

function fileOf(printed: Printed | undefined, fileName: string): Outcome<PrintedFile, Problem> {
  if (printed?.ok !== true) {
    return refused(problem('paper_not_made', 'This paper could not be made. Tell the manager.'));
  }
  return done({ pdf: new Uint8Array(printed.value.pdf), fileName });
}

function notMade({ name, ...details }: { readonly name: string }): Problem {
  if (name === 'record_no_longer_counts' && 'now' in details) {
    const message = `This record was edited. Print the one that stands for it: ${details.now}.`;
    return problem('no_such_paper', message, { name });
  }
  const message = 'There is nothing that this paper could be about. Choose it in the app again.';
  return problem('no_such_paper', message, { name });
}
