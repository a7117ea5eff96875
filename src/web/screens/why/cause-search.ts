import type { Ledger } from '../../../ledger/ledger.ts';
import type { SeenExplained } from '../../../questions/explain/explain-seen.ts';
import type { Seen } from '../../../questions/explain/seen.ts';
import { scriptAddress } from '../../script-address.ts';
import type { Question } from './explain-worker.ts';
import address from './explain-worker.ts?worker&url';

/** What is asked of a book as it stands; the version grows with every record. */
export interface Asking {
  readonly ledger: Ledger;
  readonly version: number;
  readonly seen: readonly Seen[];
  readonly day: string;
}

/**
 * Looks for causes in a worker. A question that is asked while another is being answered ends that
 * one: what it was about is no longer shown.
 */
export class CauseSearch {
  #worker: Worker | undefined;
  /** The version of the book that the worker has. */
  #version: number | undefined;
  #isBusy = false;

  /** @param onFailed the worker could not be loaded or broke off */
  ask(asking: Asking, onFound: (found: SeenExplained) => void, onFailed: () => void): void {
    if (this.#isBusy) this.end();
    this.#worker ??= new Worker(scriptAddress(address));
    const worker = this.#worker;
    worker.onmessage = ({ data }: MessageEvent<SeenExplained>) => {
      this.#isBusy = false;
      onFound(data);
    };
    worker.onerror = () => {
      this.end();
      onFailed();
    };
    const { ledger, version, seen, day } = asking;
    const isKnown = version === this.#version;
    const records = isKnown ? {} : { records: [...ledger.standing.records()] };
    const question: Question = { ...records, seen, day };
    worker.postMessage(question);
    this.#version = version;
    this.#isBusy = true;
  }

  /** Ends the worker and whatever it is looking for. */
  end(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#version = undefined;
    this.#isBusy = false;
  }
}
