import type { DatabaseSync } from 'node:sqlite';
import { assert } from '../../base/assert.ts';
import { canonicalText } from '../../base/canonical-text.ts';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import type { Appended, AppendRefusal, Arrived, BookName } from '../../journal/journal.ts';
import { planAppend } from '../../journal/plan-append.ts';
import { BOOK_VERSION, type Header } from '../../records/header.ts';
import type { BookRecord } from '../../records/record.ts';
import { textOf } from './rows.ts';
import { addToDigest, EMPTY_DIGEST, sealOf } from './seal.ts';
import { errorText, sqliteFailure } from './sqlite-failure.ts';
import type { GroupHead } from './verify.ts';

/**
 * The one writer of a store. Appends that wait together share a transaction, so many helpers cost
 * one sync of the disk; each is answered only after the commit that holds it has been synced.
 */
export type AppendOutcome = Outcome<Appended, AppendRefusal>;

interface Waiting {
  readonly book: BookName;
  readonly records: readonly BookRecord[];
  readonly answer: (outcome: AppendOutcome) => void;
  readonly fail: (bug: unknown) => void;
}

export class SqliteWriter {
  readonly #db: DatabaseSync;
  readonly #heads: Map<string, GroupHead>;
  /** Shared with the store: a line in it stops all writing. */
  readonly #damage: string[];
  readonly #find;
  readonly #insert;
  readonly #insertBook;
  readonly #begin;
  readonly #commit;
  /** Books whose header is known to be kept. */
  readonly #made = new Set<string>();
  #waiting: Waiting[] = [];
  #scheduled = false;

  constructor(db: DatabaseSync, heads: ReadonlyMap<string, GroupHead>, damage: string[]) {
    this.#db = db;
    this.#heads = new Map(heads);
    this.#damage = damage;
    this.#find = db.prepare(
      'select text from record where book_group = ? and season = ? and id = ?',
    );
    this.#insert = db.prepare('insert into record values (?, ?, ?, ?, ?, ?, ?)');
    this.#insertBook = db.prepare('insert into book values (?, ?, ?, ?) on conflict do nothing');
    this.#begin = db.prepare('begin immediate');
    this.#commit = db.prepare('commit');
  }

  lastArrival(group: string): number {
    return this.#heads.get(group)?.arrival ?? 0;
  }

  /**
   * Keeps the header of a new book. Where the disk is full the book is made with its first record
   * instead, whose append is then refused or taken by name.
   */
  makeBook(book: BookName): void {
    if (this.#damage.length > 0) return;
    try {
      this.#keepHeader(book);
      this.#made.add(`${book.group} ${book.season}`);
    } catch (error) {
      this.#refusalOf(error);
    }
  }

  #keepHeader({ group, season }: BookName): void {
    const header: Header = { book: BOOK_VERSION, group, season };
    const text = canonicalText(header);
    this.#insertBook.run(group, season, text, sealOf(group, season, text));
  }

  append(book: BookName, records: readonly BookRecord[]): Promise<AppendOutcome> {
    return new Promise((answer, fail) => {
      this.#waiting.push({ book, records, answer, fail });
      if (this.#scheduled) return;
      this.#scheduled = true;
      // After the requests that have already come in have added theirs.
      setImmediate(() => this.flush());
    });
  }

  /** Writes all that waits in one transaction and answers each. */
  flush(): void {
    const waiting = this.#waiting;
    this.#waiting = [];
    this.#scheduled = false;
    if (waiting.length === 0) return;
    try {
      const outcomes = this.#damage.length > 0 ? this.#refuseAll(waiting) : this.#write(waiting);
      waiting.forEach(({ answer }, at) => {
        const outcome = outcomes[at];
        assert(outcome !== undefined, 'every append has an outcome');
        answer(outcome);
      });
    } catch (bug) {
      for (const { fail } of waiting) fail(bug);
    }
  }

  #refuseAll(waiting: readonly Waiting[]): readonly AppendOutcome[] {
    const detail = this.#damage[0] ?? '';
    return waiting.map(() => refused({ name: 'store_is_damaged', detail }));
  }

  #write(waiting: readonly Waiting[]): readonly AppendOutcome[] {
    const heads = new Map(this.#heads);
    try {
      this.#begin.run();
      const outcomes = waiting.map(({ book, records }) => this.#insertAll(book, records, heads));
      this.#commit.run();
      for (const [group, head] of heads) this.#heads.set(group, head);
      return outcomes;
    } catch (error) {
      if (this.#db.isTransaction) this.#db.exec('rollback');
      const refusal = this.#refusalOf(error);
      return waiting.map(() => refused(refusal));
    }
  }

  #insertAll(
    book: BookName,
    records: readonly BookRecord[],
    heads: Map<string, GroupHead>,
  ): AppendOutcome {
    const { group, season } = book;
    const plan = planAppend(records, (id) => {
      const kept = this.#find.get(group, season, id);
      return kept === undefined ? undefined : textOf(kept.text);
    });
    if (!plan.ok) return plan;
    if (!this.#made.has(`${group} ${season}`)) this.#keepHeader(book);
    let { arrival, digest } = heads.get(group) ?? { arrival: 0, digest: EMPTY_DIGEST };
    const added = plan.value.fresh.map(({ record, text }): Arrived => {
      const seal = sealOf(group, season, text);
      arrival += 1;
      digest = addToDigest(digest, seal);
      this.#insert.run(group, arrival, season, record.id, text, seal, digest);
      return { arrival, record };
    });
    heads.set(group, { arrival, digest });
    return done({ added, already: plan.value.already });
  }

  /**
   * A full disk is told and may be tried again. After any other failure, above all of a sync,
   * nobody knows what is on the disk: writing stops until the store is opened and verified anew
   * (trying a failed sync again may report success for data that is gone).
   */
  #refusalOf(error: unknown): AppendRefusal {
    const failure = sqliteFailure(error);
    if (failure === undefined) throw error;
    if (failure === 'full') return { name: 'store_is_full', detail: errorText(error) };
    const detail = `writing failed (${errorText(error)}); start Cratebook again`;
    this.#damage.push(detail);
    return { name: 'store_is_damaged', detail };
  }
}
