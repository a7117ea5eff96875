import { Ledger } from '../../../ledger/ledger.ts';
import { explainSeen, type SeenExplained } from '../../../questions/explain/explain-seen.ts';
import type { Seen } from '../../../questions/explain/seen.ts';
import type { BookRecord } from '../../../records/record.ts';

/**
 * Runs beside the page and looks for causes, so that the page stays quick meanwhile. It gets the
 * book's records once and again after a change, then questions, and answers each.
 */
export interface Question {
  /** Missing where the book has not changed since the last question. */
  readonly records?: readonly BookRecord[];
  readonly seen: readonly Seen[];
  readonly day: string;
}

interface Beside {
  addEventListener(type: 'message', heard: (message: { readonly data: Question }) => void): void;
  postMessage(answer: SeenExplained): void;
}

declare const self: Beside;

let ledger = Ledger.of([]);
self.addEventListener('message', ({ data }) => {
  if (data.records !== undefined) ledger = Ledger.of(data.records);
  self.postMessage(explainSeen(ledger, data.seen, data.day));
});
