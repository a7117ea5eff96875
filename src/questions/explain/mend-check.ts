import { uuid7 } from '../../base/id.ts';
import { Ledger } from '../../ledger/ledger.ts';
import { type BookRecord, isMovement } from '../../records/record.ts';
import { type Edit, recordsOfEdits, type Written } from './edits.ts';
import { differenceOf, type ObservedAccount } from './observation.ts';

/**
 * Writes edits into a copy of the book as records, folds it, and compares: the last word before an
 * explanation is given out, by another way than the one that found it. The copy is folded once;
 * after each look the edits are taken back by further records.
 */
export class MendCheck {
  readonly #observed: readonly ObservedAccount[];
  readonly #day: string | undefined;
  readonly #copy: Ledger;
  #written = 0;
  readonly #startMs: number;

  constructor(ledger: Ledger, observed: readonly ObservedAccount[], day: string | undefined) {
    this.#observed = observed;
    this.#day = day;
    this.#copy = Ledger.of(ledger.standing.records());
    let latest = '1970-01-01T00:00:00.000Z';
    for (const { at } of ledger.standing.records()) if (at > latest) latest = at;
    this.#startMs = Date.parse(latest);
  }

  /** True where the book with these edits is exactly what was observed. */
  comesOutEven(edits: readonly Edit[]): boolean {
    const records = recordsOfEdits(edits, this.#copy, () => this.#write());
    for (const record of records) this.#copy.add(record);
    const balances = this.#day === undefined ? this.#copy.balances : this.#copy.asOf(this.#day);
    const left = differenceOf(this.#observed, balances);
    for (const record of records.reverse()) this.#takeBack(record);
    return Object.keys(left).length === 0;
  }

  #takeBack(record: BookRecord): void {
    const before =
      record.replaces === undefined ? undefined : this.#copy.standing.get(record.replaces);
    if (before === undefined || !isMovement(before)) {
      this.#copy.add({ ...this.#write(), kind: 'void', voids: record.id, reason: 'taken back' });
    } else this.#copy.add({ ...before, ...this.#write(), replaces: record.id });
  }

  /** Ids and times of the copy alone: they count up from the book's last time. */
  #write(): Written {
    this.#written += 1;
    const ms = this.#startMs + this.#written;
    const bytes = new Uint8Array(10);
    new DataView(bytes.buffer).setUint32(4, this.#written);
    return { id: uuid7(ms, bytes), at: new Date(ms).toISOString(), by: 'explain' };
  }
}
