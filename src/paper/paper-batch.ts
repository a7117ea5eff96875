import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { refused } from '../base/outcome.ts';
import type { Paper } from '../statements/paper.ts';
import { paperPdf } from './paper-pdf.ts';
import { type PaperSize, type Printed, paperNotMade } from './paper-printer.ts';
import type { PrintDone, PrintJob } from './print-worker.ts';

/**
 * Many papers at once. A few are printed here; more go to processes of their own, one a processor
 * core, because the typesetter's threads share one cache and slow each other down (measured: two
 * threads print no faster than one, two processes nearly twice as fast).
 */

/** Up to this many papers, starting processes would take longer than printing. */
const HERE_MAX = 24;
const WORKERS_MAX = 4;
/** Papers a worker has waiting, so that it never stands idle while a file is written. */
const WAITING_MAX = 3;

export interface BatchOptions {
  readonly size: PaperSize;
  /**
   * Called for each paper as it is done, in no fixed order. One that was refused does not stop the
   * others. `done` counts from 1 to the number of papers, for showing progress.
   */
  readonly each: (paper: Paper, printed: Printed, done: number) => void;
}

export async function paperPdfs(papers: readonly Paper[], options: BatchOptions): Promise<void> {
  let done = 0;
  const tell = (paper: Paper, printed: Printed): void => {
    done += 1;
    options.each(paper, printed, done);
  };
  if (papers.length <= HERE_MAX) {
    for (const paper of papers) tell(paper, await paperPdf(paper, options));
    return;
  }
  const queue = new PrintQueue(papers, options.size, tell);
  const workers = Math.min(availableParallelism(), WORKERS_MAX);
  await Promise.all(Array.from({ length: workers }, () => queue.work()));
}

/** Hands papers out to workers; each paper goes out once and comes back once, or is refused. */
class PrintQueue {
  readonly #papers: readonly Paper[];
  readonly #size: PaperSize;
  readonly #tell: (paper: Paper, printed: Printed) => void;
  #next = 0;

  constructor(
    papers: readonly Paper[],
    size: PaperSize,
    tell: (paper: Paper, printed: Printed) => void,
  ) {
    this.#papers = papers;
    this.#size = size;
    this.#tell = tell;
  }

  /** Keeps one worker busy until nothing is left; a worker that dies is followed by another. */
  async work(): Promise<void> {
    while (this.#next < this.#papers.length) await this.#workUntilEnd(startWorker());
  }

  #workUntilEnd(worker: ChildProcess): Promise<void> {
    const waiting = new Map<number, Paper>();
    return new Promise((resolve, reject) => {
      const finish = (at: number, printed: Printed): void => {
        const paper = waiting.get(at);
        waiting.delete(at);
        if (paper !== undefined) this.#tell(paper, printed);
      };
      // What the caller does with a paper failed (a full disk): hand out no more, and say so.
      const stop = (error: unknown): void => {
        this.#next = this.#papers.length;
        waiting.clear();
        worker.kill();
        reject(error);
      };
      const end = (): void => {
        try {
          for (const [at, paper] of [...waiting]) {
            finish(at, refused(paperNotMade(paper, 'the printing process stopped')));
          }
          resolve();
        } catch (error) {
          stop(error);
        }
      };
      worker.on('message', (answer: PrintDone) => {
        try {
          finish(answer.at, answer.printed);
          this.#handOut(worker, waiting);
        } catch (error) {
          stop(error);
        }
      });
      worker.on('error', end);
      worker.on('exit', end);
      this.#handOut(worker, waiting);
    });
  }

  #handOut(worker: ChildProcess, waiting: Map<number, Paper>): void {
    while (waiting.size < WAITING_MAX) {
      const at = this.#next;
      const paper = this.#papers[at];
      if (paper === undefined) break;
      this.#next += 1;
      waiting.set(at, paper);
      const job: PrintJob = { at, paper, size: this.#size };
      worker.send(job);
    }
    if (waiting.size === 0) worker.disconnect();
  }
}

function startWorker(): ChildProcess {
  return fork(new URL('./print-worker.ts', import.meta.url), {
    serialization: 'advanced',
    execArgv: [],
    // One core a worker: threads inside the typesetter would only compete with the other workers.
    env: { ...process.env, RAYON_NUM_THREADS: '1' },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
}
