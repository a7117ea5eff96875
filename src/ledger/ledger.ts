import { canonicalText } from '../base/canonical-text.ts';
import type { IdTable } from '../base/id-table.ts';
import {
  type BookRecord,
  byHappened,
  isMovement,
  isSetup,
  type MovementRecord,
  type SetupRecord,
} from '../records/record.ts';
import { AccountSums } from './account-sums.ts';
import { Balances } from './balances.ts';
import { Fold } from './fold.ts';
import { type Mover, type PostingContext, post } from './posting.ts';
import { type PriceSteps, priceOn, pricesOf } from './prices.ts';
import { type Setup, setupOf } from './setup.ts';
import { Standing } from './standing.ts';

/**
 * What adding a record did. `conflicts` means the id is taken by other content: nothing changed.
 */
export type Added = 'added' | 'already' | 'same_id_with_other_content';

/**
 * A book folded into balances. Derived from records and nothing else; throw it away and fold again
 * and it is the same, whatever the order the records came in. Adding a record updates it in place.
 */
export class Ledger {
  readonly standing: Standing;
  readonly #movementRecords: MovementRecord[] = [];
  readonly #setupRecords: SetupRecord[] = [];
  #balances = new Balances();
  #prices: PriceSteps = new Map();
  #setup: Setup | undefined;
  /** Until the next record: many questions of one screen ask for it. */
  #inOrder: readonly MovementRecord[] | undefined;
  /**
   * Bounces and returned debits by the record they point at, to post them again when it changes.
   */
  readonly #followers = new Map<string, MovementRecord[]>();

  private constructor(standing: Standing) {
    this.standing = standing;
    for (const record of standing.records()) this.#sort(record);
    this.#rebuild();
  }

  /** Folds a whole book. A record that is there twice counts once. */
  static of(records: Iterable<BookRecord>): Ledger {
    const standing = new Standing();
    for (const record of records) standing.add(record);
    return new Ledger(standing);
  }

  /**
   * Folds records whose ids a reader has found distinct already; it keeps and extends both
   * arguments. On large books this spares a second table of ids.
   *
   * @param places the place of each record in the list, by id
   */
  static ofDistinct(records: BookRecord[], places: IdTable): Ledger {
    return new Ledger(new Standing(records, places));
  }

  /** Adds one record to the balances: the same result as folding the whole book with it. */
  add(record: BookRecord): Added {
    const known = this.standing.get(record.id);
    if (known !== undefined) {
      return canonicalText(known) === canonicalText(record)
        ? 'already'
        : 'same_id_with_other_content';
    }
    const touched = this.#movementsTouchedBy(record);
    if (touched === 'prices') {
      this.#keep(record);
      this.#rebuild();
      return 'added';
    }
    const taken = touched.filter((movement) => this.standing.counts(movement));
    for (const movement of taken) this.#post(movement, this.#balances, -1);
    this.#keep(record);
    this.#setup = undefined;
    const standing = isMovement(record) ? [...touched, record] : touched;
    for (const movement of new Set(standing)) {
      if (this.standing.counts(movement)) this.#post(movement, this.#balances, 1);
    }
    return 'added';
  }

  get size(): number {
    return this.standing.size;
  }

  get balances(): Balances {
    return this.#balances;
  }

  get prices(): PriceSteps {
    return this.#prices;
  }

  get setup(): Setup {
    this.#setup ??= setupOf(this.#countingSetup());
    return this.#setup;
  }

  /** Movements that count, by the day they happened, then by when they were written. */
  movements(): readonly MovementRecord[] {
    this.#inOrder ??= [...this.#countingMovements()].sort(byHappened);
    return this.#inOrder;
  }

  /** Balances at the end of a day, from the movements dated up to it and the prices of that day. */
  asOf(day: string): Balances {
    return this.#foldAll(day);
  }

  /** The postings of one movement at the prices of its own day, without later revaluation. */
  postingsTo(movement: MovementRecord, mover: Mover): void {
    post(movement, this.#context, mover);
  }

  /**
   * What one more movement would add to the balances. It is exact for a movement that stands for no
   * other one; an edit takes back as well what it stands for.
   */
  movesOf(movement: MovementRecord): Balances {
    const moves = new Balances();
    this.#post(movement, moves, 1);
    return moves;
  }

  /** Price in minor units of a unit on a day, or at the end of all days. */
  priceOn(product: string, day?: string): number {
    return priceOn(this.#prices, product, day);
  }

  #keep(record: BookRecord): void {
    if (!this.standing.add(record)) return;
    this.#sort(record);
    this.#inOrder =
      isMovement(record) && record.replaces === undefined && this.standing.counts(record)
        ? this.#inOrder && putInOrder(this.#inOrder, record)
        : undefined;
  }

  /** Puts a record where the fold finds it. */
  #sort(record: BookRecord): void {
    if (isMovement(record)) this.#movementRecords.push(record);
    else if (isSetup(record)) this.#setupRecords.push(record);
    const pointsAt =
      record.kind === 'bounced'
        ? record.payment
        : record.kind === 'debit-returned'
          ? record.debit
          : undefined;
    if (pointsAt === undefined) return;
    const followers = this.#followers.get(pointsAt) ?? [];
    this.#followers.set(pointsAt, followers);
    if (isMovement(record)) followers.push(record);
  }

  #rebuild(): void {
    this.#setup = undefined;
    this.#prices = this.#currentPrices();
    this.#balances = this.#foldAll();
  }

  #currentPrices(): PriceSteps {
    const products = this.#setupRecords.filter((record) => record.kind === 'product');
    const counts = (product: BookRecord) => this.standing.counts(product);
    return pricesOf(products, counts, this.setup.season?.starts ?? '');
  }

  #countingMovements(): readonly MovementRecord[] {
    const overruled = this.standing.overruled();
    if (overruled.size === 0) return this.#movementRecords;
    return this.#movementRecords.filter((movement) => !overruled.has(movement));
  }

  #countingSetup(): SetupRecord[] {
    const overruled = this.standing.overruled();
    return this.#setupRecords.filter((record) => !overruled.has(record));
  }

  /** Movements whose postings may change with a record, or 'prices' where all may. */
  #movementsTouchedBy(record: BookRecord): MovementRecord[] | 'prices' {
    const movements = new Set<MovementRecord>();
    for (const id of this.standing.touchedBy(record)) {
      const known = id === record.id ? record : this.standing.get(id);
      if (known?.kind === 'product' || known?.kind === 'season') return 'prices';
      if (known !== undefined && known !== record && isMovement(known)) movements.add(known);
      for (const follower of this.#followers.get(id) ?? []) movements.add(follower);
    }
    return [...movements];
  }

  #post(movement: MovementRecord, balances: Balances, sign: 1 | -1): void {
    new Fold(balances, this.#prices, this.#context, undefined, sign).post(movement);
  }

  #foldAll(asOf?: string): Balances {
    const sums = new AccountSums();
    const fold = new Fold(sums, this.#prices, this.#context, asOf);
    for (const movement of this.#countingMovements()) fold.post(movement);
    return Balances.of(sums);
  }

  readonly #context: PostingContext = {
    priceOn: (product, day) => priceOn(this.#prices, product, day),
    paymentOf: (id) => {
      const record = this.standing.currentOf(id);
      return record?.kind === 'payment' ? record : undefined;
    },
    debitOf: (id) => {
      const record = this.standing.currentOf(id);
      return record?.kind === 'debit' ? record : undefined;
    },
  };
}

/** Most records are of the last days: their place is looked for from the end. */
function putInOrder(
  movements: readonly MovementRecord[],
  movement: MovementRecord,
): readonly MovementRecord[] {
  const before = movements.findLastIndex((each) => byHappened(each, movement) <= 0);
  return movements.toSpliced(before + 1, 0, movement);
}
