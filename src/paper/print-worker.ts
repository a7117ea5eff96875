import { PaperPrinter, type PaperSize, type Printed, type Sheaf } from './paper-printer.ts';

/**
 * A process of its own that prints for print-queue.ts: it keeps the typesetter's work, and any
 * crash of it, out of the process that keeps the book. It ends when its parent goes.
 */
export interface PrintJob {
  readonly at: number;
  readonly sheaf: Sheaf;
  readonly size: PaperSize;
}

export interface PrintDone {
  readonly at: number;
  readonly printed: Printed;
}

const printer = new PaperPrinter();

process.on('message', (job: PrintJob) => {
  const answer: PrintDone = { at: job.at, printed: printer.printSheaf(job.sheaf, job.size) };
  process.send?.(answer);
});
