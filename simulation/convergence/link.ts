import { done, refused } from '../../src/base/outcome.ts';
import type { RecordsAnswer } from '../../src/contract/api.ts';
import { memoryStore } from '../../src/journal/memory-store.ts';
import type { BookRecord } from '../../src/records/record.ts';
import { type KeptBook, Library } from '../../src/server/library.ts';
import type { Connection } from '../../src/web/connection.ts';

/** The server of a history: the real rules and library over a store in memory. */
export const ADDRESS = { group: 'wrenfield', season: 'spring-2027' } as const;

export async function serverWith(setup: readonly BookRecord[]): Promise<KeptBook> {
  const library = new Library(memoryStore(), () => '2027-04-01');
  const made = await library.make(ADDRESS);
  if (!made.ok) throw new Error('a store in memory takes a book');
  await made.value.merge(setup);
  return made.value;
}

/**
 * What becomes of a request that sends records: it arrives and is answered; it never arrives; it
 * arrives and the answer is lost; it arrives twice; it is held up and arrives later, after others.
 */
export type Fate = 'answered' | 'lost' | 'answer lost' | 'twice' | 'late';

const NO_ANSWER = { name: 'no_answer', message: 'The server did not answer.' } as const;

/** A device's way to the server; `fate` says what happens to what it sends next. */
export class Link {
  fate: Fate = 'answered';
  readonly #server: KeptBook;
  readonly #late: (readonly BookRecord[])[] = [];

  constructor(server: KeptBook) {
    this.#server = server;
  }

  /** Requests that were held up arrive now, the last one first. */
  async deliverLate(): Promise<void> {
    for (const records of this.#late.splice(0).reverse()) await this.#server.append(records);
  }

  readonly connection: Connection = {
    openSession: async () => done(undefined),
    endSession: async () => done(undefined),
    books: async () => done({ books: [], damage: [] }),
    makeBook: async (book) => done({ book: 'cratebook/1', ...book }),
    recordsAfter: async (_address, after) => {
      if (this.fate === 'lost') return refused(NO_ANSWER);
      const records = await this.#server.journal.readSince(after);
      return done({ records, last: records.at(-1)?.arrival ?? after } satisfies RecordsAnswer);
    },
    append: async (_address, records) => {
      if (this.fate === 'lost') return refused(NO_ANSWER);
      if (this.fate === 'late') {
        this.#late.push(records);
        return refused(NO_ANSWER);
      }
      const outcome = await this.#server.append(records);
      const again = this.fate === 'twice' ? await this.#server.append(records) : outcome;
      if (this.fate === 'answer lost') return refused(NO_ANSWER);
      if (again.ok) {
        const { added, already } = again.value;
        const arrivals = added.map(({ arrival, record }) => ({ arrival, id: record.id }));
        return done({ added: arrivals, already });
      }
      const { refusal } = again;
      if (refusal.name !== 'against_the_rules') {
        return refused({ name: refusal.name, message: refusal.name });
      }
      return refused({ name: refusal.rule.name, message: refusal.rule.message });
    },
  };
}
