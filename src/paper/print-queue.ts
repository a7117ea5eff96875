import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { refused } from '../base/outcome.ts';
import { type PaperSize, type Printed, paperNotMade, type Sheaf } from './paper-printer.ts';
import type { PrintDone, PrintJob } from './print-worker.ts';

/**
 * Hands work out to processes that print, one a processor core, because the typesetter's threads
 * share one cache and slow each other down (measured: two threads print no faster than one, two
 * processes nearly twice as fast). Each sheaf goes out once and comes back once, or is refused.
 */
export class PrintQueue {
  readonly #sheaves: Iterator<Sheaf>;
  readonly #size: PaperSize;
  readonly #tell: (sheaf: Sheaf, printed: Printed) => void;
  readonly #waitingMax: number;
  #out = 0;
  #isEmpty = false;

  /**
   * @param sheaves taken one by one as a process has room, so that they may be made meanwhile
   * @param waitingMax sheaves a process has waiting, so that it never stands idle
   */
  constructor(
    sheaves: Iterable<Sheaf>,
    size: PaperSize,
    waitingMax: number,
    tell: (sheaf: Sheaf, printed: Printed) => void,
  ) {
    this.#sheaves = sheaves[Symbol.iterator]();
    this.#size = size;
    this.#waitingMax = waitingMax;
    this.#tell = tell;
  }

  /** @param workersMax processes at most, beside the processor's own number */
  async print(workersMax: number): Promise<void> {
    const workers = Math.min(availableParallelism(), workersMax);
    await Promise.all(Array.from({ length: workers }, () => this.#work()));
  }

  /** Keeps one worker busy until nothing is left; a worker that dies is followed by another. */
  async #work(): Promise<void> {
    while (!this.#isEmpty) await this.#workUntilEnd(startWorker());
  }

  #workUntilEnd(worker: ChildProcess): Promise<void> {
    const waiting = new Map<number, Sheaf>();
    return new Promise((resolve, reject) => {
      const finish = (at: number, printed: Printed): void => {
        const sheaf = waiting.get(at);
        waiting.delete(at);
        if (sheaf !== undefined) this.#tell(sheaf, printed);
      };
      // What the caller does with a paper failed (a full disk): hand out no more, and say so.
      const stop = (error: unknown): void => {
        this.#isEmpty = true;
        waiting.clear();
        worker.kill();
        reject(error);
      };
      const end = (): void => {
        try {
          for (const [at, { fileName }] of [...waiting]) {
            finish(at, refused(paperNotMade(fileName, 'the printing process stopped')));
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

  #handOut(worker: ChildProcess, waiting: Map<number, Sheaf>): void {
    while (waiting.size < this.#waitingMax && !this.#isEmpty) {
      const { value: sheaf, done } = this.#sheaves.next();
      if (done === true) {
        this.#isEmpty = true;
        break;
      }
      const job: PrintJob = { at: this.#out, sheaf, size: this.#size };
      waiting.set(this.#out, sheaf);
      this.#out += 1;
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
