import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { PartFacts } from '../../intake/quick/part-facts.ts';
import { BOOK_MAX } from '../../intake/text-lines.ts';
import type { PackedSums } from '../../ledger/account-sums.ts';
import type { PartPlan, PartSums } from '../../rules/quick-part.ts';
import { BookPieces, PIECE, type SharedFile, sharedFile } from './book-pieces.ts';

/** Smaller parts are read before another thread has started. */
const PART_LEAST = 8 * 1024 * 1024;
/** Joining the parts takes longer with each, and is done by one thread. */
const PARTS_MAX = 8;
/** How much larger a part may be than another: not every thread starts at once. */
const SPARE = 1.6;
/** With it the lines of a book file begin; a store file begins otherwise. */
const LINE_START = '{'.charCodeAt(0);

/** How a file is shared out; tests share out small ones. */
export interface PartShares {
  readonly threads: number;
  /** Bytes of the smallest part, and of a piece, of which a part takes as many as it comes to. */
  readonly least: number;
  readonly piece: number;
}

const USUAL: PartShares = { threads: availableParallelism(), least: PART_LEAST, piece: PIECE };

/**
 * Has other threads begin to read a large book file, so that they start while this one still loads
 * what it needs. Undefined where one thread reads the book as quickly, and for all that is no book
 * file: whoever reads it then says what it is.
 *
 * @param withNames true where each part keeps the lines of set-up
 */
export function startParts(
  path: string,
  withNames: boolean,
  shares: PartShares = USUAL,
): FileParts | undefined {
  const file = openLines(path);
  if (file === undefined) return undefined;
  const { size } = fstatSync(file);
  const parts = Math.min(shares.threads, PARTS_MAX, Math.floor(size / shares.least));
  if (parts > 1 && size <= BOOK_MAX) {
    return new FileParts(sharedFile(file, size, shares.piece), parts, withNames);
  }
  closeSync(file);
  return undefined;
}

function openLines(path: string): number | undefined {
  if (path === '-') return undefined;
  try {
    const file = openSync(path, 'r');
    const start = new Uint8Array(1);
    if (fstatSync(file).isFile() && readSync(file, start, 0, 1, 0) === 1) {
      if (start[0] === LINE_START) return file;
    }
    closeSync(file);
  } catch {
    // Whoever reads it in the ordinary way tells what is wrong.
  }
  return undefined;
}

/** A book file that several threads read together, each its part. */
export class FileParts {
  /** For this thread, whose part is the first. */
  readonly pieces: BookPieces;
  /** About how many bytes each part has, or a few less. */
  readonly expected: number;
  /** True where each part keeps the lines of set-up. */
  readonly withNames: boolean;
  readonly others: readonly PartThread[];
  readonly #file: number;

  /** @param parts this thread's included */
  constructor(shared: SharedFile, parts: number, withNames: boolean) {
    this.pieces = new BookPieces(shared);
    this.#file = shared.file;
    this.expected = Math.ceil((shared.size / parts) * SPARE);
    this.withNames = withNames;
    const job = { shared, expected: this.expected, withNames };
    this.others = Array.from({ length: parts - 1 }, () => new PartThread(job));
  }

  /** Closes the file. Threads that have said all end by themselves, and nobody waits for that. */
  done(): void {
    for (const thread of this.others) thread.letGo();
    closeSync(this.#file);
  }

  /** Ends all threads, which may be reading, and then closes the file. */
  async stop(): Promise<void> {
    await Promise.all(this.others.map((thread) => thread.stop()));
    closeSync(this.#file);
  }
}

/** What a thread is handed to read a part. */
export interface PartJob {
  readonly shared: SharedFile;
  /** About how many bytes it will read. */
  readonly expected: number;
  readonly withNames: boolean;
}

/** A thread that reads a part. One that fails is not sure of anything. */
class PartThread {
  /** What it says first; undefined where it is not sure of its part. */
  readonly facts: Promise<PartFacts | undefined>;
  readonly #worker: Worker;

  constructor(job: PartJob) {
    this.#worker = new Worker(new URL('part-thread.ts', import.meta.url), { workerData: job });
    this.#worker.on('error', () => {});
    this.facts = this.#answer();
  }

  /** What its records come to; undefined where it is not sure of them. */
  sums(plan: PartPlan): Promise<PartSums<PackedSums> | undefined> {
    const sums = this.#answer<PartSums<PackedSums>>();
    this.#worker.postMessage(plan);
    return sums;
  }

  letGo(): void {
    this.#worker.unref();
  }

  async stop(): Promise<void> {
    await this.#worker.terminate();
  }

  #answer<T>(): Promise<T | undefined> {
    return new Promise((resolve) => {
      this.#worker.once('message', resolve);
      this.#worker.once('exit', () => resolve(undefined));
    });
  }
}
