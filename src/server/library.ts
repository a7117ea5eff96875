import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Appended, AppendRefusal, BookName, Journal } from '../journal/journal.ts';
import type { Store } from '../journal/store.ts';
import { Ledger } from '../ledger/ledger.ts';
import { closingList } from '../questions/closing-list.ts';
import type { BookRecord } from '../records/record.ts';
import { mayAppend } from '../rules/may-append.ts';
import type { Refusal } from '../rules/refusals.ts';

/** Why a book did not take records: a rule of the book, or the store. */
export type NotAppended = AppendRefusal | { readonly name: 'against_the_rules'; rule: Refusal };

/** The books of a store, each with its ledger kept up to date in memory. */
export class Library {
  readonly store: Store;
  readonly #today: () => string;
  readonly #kept = new Map<string, KeptBook>();

  /** @param today the day it is, as YYYY-MM-DD: a season is closed on a day */
  constructor(store: Store, today: () => string) {
    this.store = store;
    this.#today = today;
  }

  /** A book that is kept here; undefined where there is none of that name. */
  async find(book: BookName): Promise<KeptBook | undefined> {
    const kept = this.#kept.get(keyOf(book));
    if (kept !== undefined) return kept;
    const headers = await this.store.books();
    const isKnown = headers.some((header) => keyOf(header) === keyOf(book));
    return isKnown ? this.#open(book) : undefined;
  }

  /** A book, made where it is new. */
  async make(book: BookName): Promise<Outcome<KeptBook, NotAppended>> {
    const known = await this.find(book);
    if (known !== undefined) return done(known);
    const [damage] = this.store.damage;
    if (damage !== undefined) return refused({ name: 'store_is_damaged', detail: damage });
    await this.store.open(book);
    // A store that could not write the new book down does not list it.
    const made = await this.find(book);
    return made === undefined ? refused({ name: 'store_is_full', detail: '' }) : done(made);
  }

  async #open(book: BookName): Promise<KeptBook> {
    const journal = await this.store.open(book);
    // Two that open it at once get the same one.
    const kept = this.#kept.get(keyOf(book)) ?? new KeptBook(journal, this.#today);
    this.#kept.set(keyOf(book), kept);
    return kept;
  }
}

function keyOf(book: BookName): string {
  return `${book.group}/${book.season}`;
}

/**
 * A book with its ledger so far. The ledger is derived: it is brought up to date from the journal
 * before each use, and dropped whenever it may know a record that the journal did not take.
 */
export class KeptBook {
  readonly journal: Journal;
  readonly #today: () => string;
  #ledger = Ledger.of([]);
  #last = 0;
  #turn: Promise<unknown> = Promise.resolve();

  constructor(journal: Journal, today: () => string) {
    this.journal = journal;
    this.#today = today;
  }

  /** The ledger with every record that has arrived; for reading only. */
  ledger(): Promise<Ledger> {
    return this.#inTurn(() => this.#upToDate());
  }

  /** Rules first, then the journal: all records are taken, or none. */
  append(records: readonly BookRecord[]): Promise<Outcome<Appended, NotAppended>> {
    return this.#inTurn(async () => {
      const ledger = await this.#upToDate();
      const refusal = checkAndAdd(ledger, records, this.#today());
      if (refusal !== undefined) {
        this.#drop();
        return refused(refusal);
      }
      return this.#write(records);
    });
  }

  /**
   * Adds records of another copy of the book. They are facts that were accepted there, so the rules
   * for new records do not apply: two copies always merge.
   */
  merge(records: readonly BookRecord[]): Promise<Outcome<Appended, NotAppended>> {
    return this.#inTurn(() => this.#write(records));
  }

  async #write(records: readonly BookRecord[]): Promise<Outcome<Appended, NotAppended>> {
    try {
      const appended = await this.journal.append(records);
      if (!appended.ok) this.#drop();
      return appended.ok ? done(appended.value) : refused(appended.refusal);
    } catch (bug) {
      this.#drop();
      throw bug;
    }
  }

  async #upToDate(): Promise<Ledger> {
    const arrived = await this.journal.readSince(this.#last);
    const records = arrived.map((each) => each.record);
    if (this.#ledger.size === 0) this.#ledger = Ledger.of(records);
    else for (const record of records) this.#ledger.add(record);
    this.#last = arrived.at(-1)?.arrival ?? this.#last;
    return this.#ledger;
  }

  #drop(): void {
    this.#ledger = Ledger.of([]);
    this.#last = 0;
  }

  /** One at a time, so that nothing changes between a check and what it allowed. */
  #inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = this.#turn.then(work);
    this.#turn = mine.catch(() => undefined);
    return mine;
  }
}

/** Adds records to the ledger one after another, each checked against the book before it. */
function checkAndAdd(
  ledger: Ledger,
  records: readonly BookRecord[],
  today: string,
): NotAppended | undefined {
  const isReadyToClose = (): boolean => closingList(ledger, today).ready;
  for (const record of records) {
    const rule = mayAppend(ledger, record, { isReadyToClose });
    if (rule?.name === 'id_taken_by_other_content') {
      return { name: 'same_id_with_other_content', ids: [record.id] };
    }
    if (rule !== undefined) return { name: 'against_the_rules', rule };
    ledger.add(record);
  }
  return undefined;
}
