import type { Paper } from '../statements/paper.ts';
import { PaperPrinter, type PaperSize, type Printed } from './paper-printer.ts';

let printer: PaperPrinter | undefined;

/** One paper as a tagged PDF (PDF/UA-1, checked by the typesetter). Needs no network. */
export async function paperPdf(
  paper: Paper,
  options: { readonly size: PaperSize },
): Promise<Printed> {
  printer ??= new PaperPrinter();
  return printer.print(paper, options.size);
}
