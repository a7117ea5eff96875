import type { Paper } from '../statements/paper.ts';
import { PaperPrinter, type PaperSize, type Printed } from './paper-printer.ts';

/**
 * A process of its own that prints papers for paper-batch.ts: it keeps the typesetter's work, and
 * any crash of it, out of the process that keeps the book. It ends when its parent goes.
 */
export interface PrintJob {
  readonly at: number;
  readonly paper: Paper;
  readonly size: PaperSize;
}

export interface PrintDone {
  readonly at: number;
  readonly printed: Printed;
}

const printer = new PaperPrinter();

process.on('message', (job: PrintJob) => {
  const answer: PrintDone = { at: job.at, printed: printer.print(job.paper, job.size) };
  process.send?.(answer);
});
