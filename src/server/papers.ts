import { byText } from '../base/order.ts';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { paperPdf } from '../paper/paper-pdf.ts';
import type { PaperSize } from '../paper/paper-printer.ts';
import { familyAccount } from '../questions/family-account.ts';
import { seasonProof } from '../questions/season-proof.ts';
import { countSheet } from '../statements/count-sheet.ts';
import { familyStatement } from '../statements/family-statement.ts';
import { goodsSlip } from '../statements/goods-slip.ts';
import type { Paper } from '../statements/paper.ts';
import type { PaperContext } from '../statements/paper-frame.ts';
import { paymentReceipt } from '../statements/payment-receipt.ts';
import { seasonProofPaper } from '../statements/season-proof-paper.ts';
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
  'count-sheet': (ledger, _about, context) => done(countSheet(ledger, context)),
  'season-proof': (ledger, _about, context) => {
    const proof = seasonProof(ledger, context.asAt);
    return proof.ok ? done(seasonProofPaper(proof.value, ledger, context)) : proof;
  },
};

export interface AskedPaper {
  readonly name: string;
  /** A family or the id of a record; empty for papers about the whole book. */
  readonly about: string;
  readonly size: PaperSize;
  /** The group's name as printed. */
  readonly group: string;
  /** The day it is made on. */
  readonly today: string;
}

export interface PrintedFile {
  readonly pdf: Uint8Array<ArrayBuffer>;
  readonly fileName: string;
}

/** A paper as a tagged PDF. */
export async function printPaper(
  ledger: Ledger,
  asked: AskedPaper,
): Promise<Outcome<PrintedFile, Problem>> {
  const make = Object.hasOwn(papers, asked.name) ? papers[asked.name] : undefined;
  if (make === undefined) {
    const names = Object.keys(papers).join(', ');
    return refused(problem('no_such_paper', `There is no such paper. There are: ${names}.`));
  }
  // What is keyed for a day ahead is on the paper too, and the paper says so.
  const days = [asked.today, ledger.movements().at(-1)?.date ?? asked.today];
  const asAt = days.sort(byText).at(-1) ?? asked.today;
  const paper = make(ledger, asked.about, { group: asked.group, asAt });
  if (!paper.ok) return refused(notMade(paper.refusal));
  const printed = await paperPdf(paper.value, { size: asked.size });
  if (!printed.ok) {
    return refused(problem('paper_not_made', 'This paper could not be made. Tell the manager.'));
  }
  return done({ pdf: new Uint8Array(printed.value.pdf), fileName: paper.value.fileName });
}

function notMade({ name, ...details }: { readonly name: string }): Problem {
  if (name === 'record_no_longer_counts' && 'now' in details) {
    const message = `This record was edited. Print the one that stands for it: ${details.now}.`;
    return problem('no_such_paper', message, { name });
  }
  const message = 'There is nothing that this paper could be about. Choose it in the app again.';
  return problem('no_such_paper', message, { name });
}
