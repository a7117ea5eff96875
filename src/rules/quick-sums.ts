import { assert } from '../base/assert.ts';
import type { JoinedParts } from '../intake/quick/joined-parts.ts';
import type { AccountSums, PackedSums } from '../ledger/account-sums.ts';
import { Balances } from '../ledger/balances.ts';
import { Fold } from '../ledger/fold.ts';
import type { PriceSteps } from '../ledger/prices.ts';
import { type Setup, setupOf } from '../ledger/setup.ts';
import type { SetupRecord } from '../records/record.ts';
import { type CountingPlaces, REMOVED } from './quick-claims.ts';
import type { PartPlan, PartSums, PointedAt } from './quick-part.ts';
import { quickPrices } from './quick-prices.ts';
import { areSetUp } from './set-up-by.ts';

/** What balances need to know of a book, whichever way it was read. */
export interface BalancedBook {
  readonly balances: Balances;
  /** To be asked for only where the lines of all set-up were kept. */
  readonly setup: Setup;
}

/** Hands out what each part of a book needs to add itself up, and makes one book of the sums. */
export class QuickSums {
  /** In the order of the parts. */
  readonly plans: readonly PartPlan[];
  readonly #parts: JoinedParts;
  readonly #counting: CountingPlaces;
  /** In the order of the records that point and count: the place of what each points at now. */
  readonly #targets: Int32Array;
  readonly #prices: PriceSteps;
  readonly #day: string | undefined;

  private constructor(
    parts: JoinedParts,
    counting: CountingPlaces,
    targets: readonly number[],
    day: string | undefined,
  ) {
    this.#parts = parts;
    this.#counting = counting;
    this.#targets = Int32Array.from(targets);
    this.#prices = quickPrices(parts, counting.overruled);
    this.#day = day;
    const overruled = parts.marksByPart(counting.overruled);
    const wanted = parts.byPart(targets.filter((place) => place !== REMOVED));
    this.plans = overruled.map((marks, part) => ({
      prices: this.#prices,
      overruled: marks,
      pointedAt: wanted[part] ?? new Int32Array(),
      day,
    }));
  }

  /** Undefined where what a record that counts points at is not there, or is of another kind. */
  static of(
    parts: JoinedParts,
    counting: CountingPlaces,
    day: string | undefined,
  ): QuickSums | undefined {
    const { from, to } = parts.pointers();
    const targets: number[] = [];
    for (let pointer = 0; pointer < from.length; pointer += 1) {
      const place = from[pointer] ?? REMOVED;
      if (counting.overruled[place] === 1) continue;
      const target = to[pointer] ?? REMOVED;
      // What it was when it was written decides: an edit to another kind is left to the slow way.
      const wanted = parts.kindAt(place) === 'bounced' ? 'payment' : 'debit';
      if (parts.kindAt(target) !== wanted) return undefined;
      targets.push(counting.currentOf(target));
    }
    return new QuickSums(parts, counting, targets, day);
  }

  /**
   * The book from what its parts came to, in their order; the sums of the first are added to.
   * @returns undefined where something is named that is not in the set-up, or where sums are not
   * exact
   */
  balanced(own: PartSums, others: readonly PartSums<PackedSums>[]): BalancedBook | undefined {
    const parts = [own, ...others];
    const setUp = parts.map((part) => part.setUp);
    if (!parts.every(({ named }) => areSetUp(named, setUp))) return undefined;
    for (const { all, onDay } of others) {
      own.all.add(all);
      if (onDay !== undefined) own.onDay?.add(onDay);
    }
    const pointedAt = this.#pointedAt(parts);
    this.#postPointing(parts, pointedAt, own.all);
    const balances = Balances.of(own.all);
    if (!balances.exact) return undefined;
    if (own.onDay !== undefined) this.#postPointing(parts, pointedAt, own.onDay, this.#day);
    const setup = () => quickSetup(this.#parts, this.#counting.overruled);
    return {
      balances: own.onDay === undefined ? balances : Balances.of(own.onDay),
      get setup() {
        return setup();
      },
    };
  }

  /** What was pointed at, by its place in the book. */
  #pointedAt(parts: readonly AnyPartSums[]): ReadonlyMap<number, PointedAt> {
    const found = new Map<number, PointedAt>();
    for (const [part, { pointedAt }] of parts.entries()) {
      for (const [index, place] of (this.plans[part]?.pointedAt ?? []).entries()) {
        const record = pointedAt[index];
        if (record !== undefined) found.set(this.#parts.placeFrom(part, place), record);
      }
    }
    return found;
  }

  #postPointing(
    parts: readonly AnyPartSums[],
    pointedAt: ReadonlyMap<number, PointedAt>,
    into: AccountSums,
    day?: string,
  ): void {
    let target: PointedAt | undefined;
    const context = {
      paymentOf: () => (target?.kind === 'payment' ? target : undefined),
      debitOf: () => (target?.kind === 'debit' ? target : undefined),
    };
    const fold = new Fold(into, this.#prices, context, day);
    let pointer = 0;
    for (const { pointing } of parts) {
      for (const record of pointing) {
        target = pointedAt.get(this.#targets[pointer] ?? REMOVED);
        pointer += 1;
        fold.post(record);
      }
    }
    assert(pointer === this.#targets.length, 'a target for each record that points');
  }
}

type AnyPartSums = Omit<PartSums<unknown>, 'all' | 'onDay'>;

function quickSetup(parts: JoinedParts, overruled: Uint8Array): Setup {
  const counting: SetupRecord[] = [];
  for (const [place, record] of parts.setUp()) {
    if (overruled[place] === 0) counting.push(record);
  }
  return setupOf(counting);
}
