import type { QuickRead } from '../intake/quick/quick-reader.ts';
import type { QuickRecords } from '../intake/quick/quick-records.ts';
import { mayLackSense, senseFindings } from '../intake/sense.ts';
import { AccountSums } from '../ledger/account-sums.ts';
import { Balances } from '../ledger/balances.ts';
import { Fold } from '../ledger/fold.ts';
import { Ledger } from '../ledger/ledger.ts';
import type { PriceSteps } from '../ledger/prices.ts';
import type { Setup } from '../ledger/setup.ts';
import type { Standing } from '../ledger/standing.ts';
import {
  type BookRecord,
  type Claimant,
  isMovement,
  type Kind,
  setupKinds,
} from '../records/record.ts';
import { quickClaims } from './quick-claims.ts';
import { eachNamed } from './references.ts';
import { EverSetUp } from './set-up-by.ts';

/** What balances need to know of a book, whichever way it was read. */
export interface BalancedBook {
  readonly balances: Balances;
  readonly setup: Setup;
  asOf(day: string): Balances;
}

/** What decides prices: product records, the season's first day, and removals of these. */
const PRICING: ReadonlySet<Kind> = new Set(['season', 'product', 'void']);
const SETUP: ReadonlySet<Kind> = new Set([...setupKinds, 'void']);

/**
 * Balances of a book that was read quickly, by the ledger's own rules: the same claims, prices and
 * postings, record by record, without a list of records.
 *
 * @returns undefined where the book is not surely one that nothing refuses: it is then to be read
 * and checked the slow way, which says what is wrong
 */
export function quickBook({ records }: QuickRead): BalancedBook | undefined {
  const standing = quickClaims(records);
  if (standing === undefined) return undefined;
  const { prices } = Ledger.of(records.told(PRICING));
  const book = new QuickBook(records, standing, prices);
  const balances = book.checkedBalances();
  if (balances?.exact !== true) return undefined;
  return {
    balances,
    get setup() {
      return Ledger.of(records.told(SETUP)).setup;
    },
    asOf: (day) => book.balancesAsOf(day),
  };
}

class QuickBook {
  readonly #records: QuickRecords;
  readonly #standing: Standing<Claimant>;
  readonly #isOverruled: Uint8Array;
  readonly #prices: PriceSteps;

  constructor(records: QuickRecords, standing: Standing<Claimant>, prices: PriceSteps) {
    this.#records = records;
    this.#standing = standing;
    this.#prices = prices;
    this.#isOverruled = new Uint8Array(records.size);
    for (const { id } of standing.overruled()) this.#isOverruled[records.placeOf(id)] = 1;
  }

  /** All balances; undefined where a record may be wrong. */
  checkedBalances(): Balances | undefined {
    const sums = new AccountSums();
    const fold = this.#foldInto(sums);
    const check = new RecordCheck(this.#records);
    for (let place = 0; place < this.#records.size; place += 1) {
      const record = this.#records.at(place);
      if (!check.isFine(record, this.#isOverruled[place] === 0)) return undefined;
      if (this.#isOverruled[place] === 0 && isMovement(record)) fold.post(record);
    }
    return Balances.of(sums);
  }

  balancesAsOf(day: string): Balances {
    const sums = new AccountSums();
    const fold = this.#foldInto(sums, day);
    for (let place = 0; place < this.#records.size; place += 1) {
      const record = this.#records.at(place);
      if (this.#isOverruled[place] === 0 && isMovement(record)) fold.post(record);
    }
    return Balances.of(sums);
  }

  #foldInto(sums: AccountSums, asOf?: string): Fold {
    const pointedAt = {
      paymentOf: (id: string) => {
        const record = this.#currentOf(id);
        return record?.kind === 'payment' ? record : undefined;
      },
      debitOf: (id: string) => {
        const record = this.#currentOf(id);
        return record?.kind === 'debit' ? record : undefined;
      },
    };
    return new Fold(sums, this.#prices, pointedAt, asOf);
  }

  /** The record that counts for an id: what no claim has to do with stands for itself. */
  #currentOf(id: string): BookRecord | undefined {
    const isClaimed = this.#standing.get(id) !== undefined;
    const current = isClaimed ? this.#standing.currentOf(id)?.id : id;
    const place = current === undefined ? -1 : this.#records.placeOf(current);
    return place < 0 ? undefined : this.#records.at(place);
  }
}

/** Says of each record whether nothing about it refuses the book. */
class RecordCheck {
  readonly #records: QuickRecords;
  readonly #setUp = new EverSetUp();
  #isFine = true;

  constructor(records: QuickRecords) {
    this.#records = records;
    for (const place of records.setUpPlaces()) this.#setUp.add(records.at(place));
  }

  isFine(record: BookRecord, counts: boolean): boolean {
    if (mayLackSense(record)) this.#makesSense(record);
    if (counts) {
      eachNamed(record, this.#onNamed);
      if (record.kind === 'bounced') this.#pointsTo(record.payment, 'payment');
      if (record.kind === 'debit-returned') this.#pointsTo(record.debit, 'debit');
    }
    return this.#isFine;
  }

  readonly #onNamed: Parameters<typeof eachNamed>[1] = (thing, id) => {
    if (!this.#setUp.has(thing, id)) this.#isFine = false;
  };

  #makesSense(record: BookRecord): void {
    const findings = senseFindings(record, { line: 0 });
    if (findings.some(({ severity }) => severity === 'error')) this.#isFine = false;
  }

  /** What it was when it was written decides: an edit to another kind is left to the slow way. */
  #pointsTo(id: string, kind: Kind): void {
    const place = this.#records.placeOf(id);
    if (place < 0 || this.#records.kindAt(place) !== kind) this.#isFine = false;
  }
}
