import { uuid7 } from '../src/base/id.ts';
import type { Seeded } from '../src/base/seeded.ts';
import type { BookRecord, Kind, RecordOf } from '../src/records/record.ts';

/** What a record says beyond the fields that the writing device gives every record. */
export type Saying<K extends Kind> = Omit<RecordOf<K>, 'id' | 'at' | 'by' | 'kind'>;

/**
 * A phone or computer that records are written on. Its clock may be wrong by a fixed amount, so
 * that what it writes sorts before or after what others wrote at the same moment.
 */
export class Device {
  readonly #user: string;
  readonly #skewMs: number;
  readonly #random: Seeded;

  constructor(user: string, skewMs: number, random: Seeded) {
    this.#user = user;
    this.#skewMs = skewMs;
    this.#random = random;
  }

  /** @param ms the true time of writing, in Unix milliseconds */
  write<K extends Kind>(kind: K, saying: Saying<K>, ms: number): RecordOf<K> {
    const shownMs = ms + this.#skewMs;
    const id = uuid7(shownMs, this.#random.bytes(10));
    const written = { id, at: new Date(shownMs).toISOString(), by: this.#user, kind };
    // The kind and its fields came in as a pair; the compiler cannot follow the pair through a
    // spread.
    return { ...written, ...saying } as unknown as RecordOf<K>;
  }

  /** Writes a new record that says what an earlier one said, with some of it changed. */
  edit<R extends BookRecord>(record: R, changes: Partial<R>, ms: number): R {
    const shownMs = ms + this.#skewMs;
    const id = uuid7(shownMs, this.#random.bytes(10));
    const written = { id, at: new Date(shownMs).toISOString(), by: this.#user };
    return { ...record, ...changes, ...written, replaces: record.id };
  }
}
