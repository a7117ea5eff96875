import { Ledger } from '../ledger/ledger.ts';
import { type BookRecord, isMovement } from '../records/record.ts';

/**
 * A second fold of a book for figures "as they would be": what is supposed is added to it and taken
 * back again before the next, so that a form of a large book does not add it all up at every pause.
 */
export class TrialLedger {
  readonly #removalOf: (record: BookRecord) => BookRecord;
  #trial = Ledger.of([]);
  #of: Ledger | undefined;
  /** How many of the book's records the trial has. */
  #taken = 0;
  #supposed: readonly BookRecord[] = [];

  /** @param removalOf a new removal of a record */
  constructor(removalOf: (record: BookRecord) => BookRecord) {
    this.#removalOf = removalOf;
  }

  /** The book with more records; it holds until something else is supposed. */
  suppose(book: Ledger, records: readonly BookRecord[]): Ledger {
    if (!records.every(isNewMovement)) {
      return Ledger.of([...book.standing.records(), ...records]);
    }
    this.#follow(book);
    for (const record of this.#supposed) this.#trial.add(this.#removalOf(record));
    for (const record of records) this.#trial.add(record);
    this.#supposed = records;
    return this.#trial;
  }

  #follow(book: Ledger): void {
    const records = book.standing.records();
    if (this.#of === book) for (const record of records.slice(this.#taken)) this.#trial.add(record);
    else {
      this.#trial = Ledger.of(records);
      this.#supposed = [];
    }
    this.#of = book;
    this.#taken = records.length;
  }
}

/** Taking it back leaves the book as it was; an edit or a price would leave more behind. */
function isNewMovement(record: BookRecord): boolean {
  return isMovement(record) && record.replaces === undefined;
}
