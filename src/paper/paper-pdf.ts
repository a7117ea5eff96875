import type { Outcome } from '../base/outcome.ts';
import type { Paper } from '../statements/paper.ts';
import {
  PaperPrinter,
  type PaperRefusal,
  type PaperSize,
  type PrintedPaper,
} from './paper-printer.ts';

let printer: PaperPrinter | undefined;

/** One paper as a tagged PDF (PDF/UA-1, checked by the typesetter). Needs no network. */
export async function paperPdf(
  paper: Paper,
  options: { readonly size: PaperSize },
): Promise<Outcome<PrintedPaper, PaperRefusal>> {
  printer ??= new PaperPrinter();
  return printer.print(paper, options.size);
}
