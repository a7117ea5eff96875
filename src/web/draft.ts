import { uuid7 } from '../base/id.ts';
import type { BookRecord, Kind, RecordOf } from '../records/record.ts';
import type { Machine } from './machine.ts';

/** What a screen hands in: everything but what the device stamps on a record. */
export type Draft<K extends Kind = Kind> = K extends Kind
  ? Omit<RecordOf<K>, 'id' | 'at' | 'by'>
  : never;

const RANDOM_BYTES = 10;

/** Makes records of drafts: with an id, the moment and who wrote it. */
export class Stamp {
  readonly #machine: Pick<Machine, 'now' | 'random'>;
  #lastMs = 0;

  constructor(machine: Pick<Machine, 'now' | 'random'>) {
    this.#machine = machine;
  }

  on(draft: Draft): BookRecord {
    // Records of one tap follow each other by a millisecond, so that their order is kept.
    this.#lastMs = Math.max(this.#machine.now(), this.#lastMs + 1);
    const id = uuid7(this.#lastMs, this.#machine.random(RANDOM_BYTES));
    const at = new Date(this.#lastMs).toISOString();
    // The draft carries its own kind's fields; the compiler cannot follow the union through a
    // spread.
    return { id, at, by: 'manager', ...draft } as BookRecord;
  }
}
