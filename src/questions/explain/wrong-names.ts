import { daysBetween } from '../../base/day.ts';
import type { Setup } from '../../ledger/setup.ts';
import type { MovementRecord, RecordOf } from '../../records/record.ts';
import { unitsOf } from '../../records/units-of.ts';
import { type Effect, sumOfEffects } from '../../solvers/gap/effect.ts';
import { errorModel, type Sort } from './error-model.ts';
import type { Taking } from './hypothesis.ts';
import { type NumberField, withNumber } from './number-fields.ts';
import type { Situation } from './situation.ts';
import { isPassedOver } from './taking.ts';

/** The numbers are right, and stand at the wrong seller, product, neighbour, stall or pool. */
export function wrongNames(situation: Situation, taking: Taking): void {
  const look = new NameLook(situation, taking);
  for (const record of situation.entries) {
    if (situation.isApart(record)) continue;
    look.sellers(record);
    if (!isPassedOver(situation, taking, record)) look.products(record);
    look.others(record);
  }
}

class NameLook {
  readonly #situation: Situation;
  readonly #taking: Taking;
  readonly #setup: Setup;
  readonly #inDoubt = new Map<Effect, boolean>();
  /** Sellers whose accounts differ, and those whose accounts nobody looked at. */
  readonly #off: readonly string[];
  readonly #unseen: readonly string[];

  constructor(situation: Situation, taking: Taking) {
    this.#situation = situation;
    this.#taking = taking;
    this.#setup = situation.ledger.setup;
    this.#off = situation.sellers.filter((seller) => situation.isSellerOff(seller));
    this.#unseen = situation.sellers.filter((seller) => !situation.isSellerSeen(seller));
  }

  sellers(record: MovementRecord): void {
    switch (record.kind) {
      case 'handover':
      case 'return':
      case 'payment':
      case 'refund':
        this.#sellerOf(record, record.seller, (seller) => ({ ...record, seller }));
        return;
      case 'gift':
      case 'online':
        this.#sellerOf(record, record.seller, (seller) => ({ ...record, seller }));
        return;
      case 'loss':
        if (record.seller === undefined) return;
        this.#sellerOf(record, record.seller, (seller) => ({ ...record, seller }));
        return;
      case 'pass':
        this.#sellerOf(record, record.from, (from) => ({ ...record, from }), [record.to]);
        this.#sellerOf(record, record.to, (to) => ({ ...record, to }), [record.from]);
        return;
      case 'shareout':
        for (const seller in record.lines) this.#shareoutSeller(record, seller);
        return;
      default:
    }
  }

  /** A line stands at another product; units that are there already stay. */
  products(record: MovementRecord): void {
    for (const field of this.#situation.fieldsOf(record)) {
      const { product, value } = field;
      if (product === undefined || value === 0) continue;
      if (this.#situation.isSettledProduct(record, field)) continue;
      if (!this.#isProductInDoubt(record, field)) continue;
      for (const other of this.#othersFor(record, field)) {
        if (other === product) continue;
        const target: NumberField = {
          ...field,
          product: other,
          value: heldIn(record, field, other),
        };
        if (!this.#isProductInDoubt(record, target)) continue;
        const { effects } = this.#situation;
        const from = effects.unit(record, field);
        const to = effects.unit(record, target);
        const effect = sumOfEffects([
          [from, -value],
          [to, value],
        ]);
        const becomes = withNumber(withNumber(record, field, 0), target, value + target.value);
        const chance = errorModel['wrong-product'].rate / (this.#situation.products.length - 1);
        this.#taking.take(effect, 1, { sort: 'wrong-product', chance, record, field, becomes });
      }
    }
  }

  others(record: MovementRecord): void {
    const { neighbours, stalls } = this.#setup;
    if (record.kind === 'swap-in' || record.kind === 'swap-out') {
      const names = [...neighbours.keys()].filter((each) => each !== record.neighbour);
      for (const neighbour of this.#situation.isSettled(record) ? [] : names) {
        this.#change('wrong-neighbour', record, { ...record, neighbour }, names.length);
      }
    }
    if (this.#situation.offPools.size === 0) return;
    if (record.kind === 'stall-close') {
      const near = [...stalls.values()].filter(
        (stall) =>
          stall.stall !== record.stall &&
          this.#arePoolsInDoubt(`stall:${record.stall}`, `stall:${stall.stall}`) &&
          Math.abs(daysBetween(record.date, stall.starts.slice(0, 10))) <= NEAR_STALL_DAYS,
      );
      for (const { stall } of near) {
        this.#change('wrong-stall', record, { ...record, stall }, near.length);
      }
    }
    if (record.kind === 'shareout') {
      const pools = ['post', 'gift', ...[...stalls.keys()].map((stall) => `stall:${stall}`)];
      const others = pools.filter((pool) => pool !== record.pool);
      for (const pool of others.filter((each) => this.#arePoolsInDoubt(record.pool, each))) {
        this.#change('wrong-pool', record, { ...record, pool }, pools.length - 1);
      }
    }
  }

  #sellerOf(
    record: MovementRecord,
    seller: string | undefined,
    named: (seller: string) => MovementRecord,
    not: readonly string[] = [],
  ): void {
    for (const other of this.#otherSellers(seller)) {
      if (not.includes(other)) continue;
      this.#change('wrong-seller', record, named(other), this.#situation.sellers.length);
    }
  }

  #shareoutSeller(record: RecordOf<'shareout'>, seller: string): void {
    for (const other of this.#otherSellers(seller)) {
      if (Object.hasOwn(record.lines, other)) continue;
      const lines = Object.fromEntries(
        Object.entries(record.lines).map(([each, units]) => [
          each === seller ? other : each,
          units,
        ]),
      );
      this.#change('wrong-seller', record, { ...record, lines }, this.#situation.sellers.length);
    }
  }

  /**
   * Who else it may have been. Where both were looked at, both must differ: a wrong name shows at
   * either end.
   */
  #otherSellers(seller: string | undefined): readonly string[] {
    const situation = this.#situation;
    if (seller === undefined)
      return this.#isNobodyOff ? [...this.#off, ...this.#unseen] : this.#off;
    const isUnseen = !situation.isSellerSeen(seller);
    if (!isUnseen && !situation.isSellerOff(seller)) return [];
    const others = isUnseen ? this.#off : [...this.#off, ...this.#unseen];
    return others.filter((other) => other !== seller);
  }

  /** True where what belongs to nobody named differs: buyers, and pools without a stall. */
  get #isNobodyOff(): boolean {
    const situation = this.#situation;
    if (situation.isOff('money', 'buyers')) return true;
    return situation.isOff('credit', 'pool:post') || situation.isOff('credit', 'pool:gift');
  }

  /** One of two pools differs, and the other does too where somebody looked at it. */
  #arePoolsInDoubt(one: string, other: string): boolean {
    const isOff = (pool: string) => this.#situation.offPools.has(pool);
    const mayBe = (pool: string) =>
      isOff(pool) || !this.#situation.isSeen('credit', `pool:${pool}`);
    return (isOff(one) && mayBe(other)) || (isOff(other) && mayBe(one));
  }

  /** Products that it may have been: where goods were seen, only those that differ. */
  #othersFor(record: MovementRecord, field: NumberField): Iterable<string> {
    const { effects, hotProducts, products } = this.#situation;
    const { places } = effects.unit(record, field);
    const isGoodsSeen = places.some((place) => effects.places.at(place).product !== '');
    return isGoodsSeen ? hotProducts : products;
  }

  /** True where the goods of a unit differ somewhere; where nobody saw them, its price. */
  #isProductInDoubt(record: MovementRecord, field: NumberField): boolean {
    const unit = this.#situation.effects.unit(record, field);
    const known = this.#inDoubt.get(unit);
    if (known !== undefined) return known;
    const isInDoubt = this.#isUnitInDoubt(unit);
    this.#inDoubt.set(unit, isInDoubt);
    return isInDoubt;
  }

  #isUnitInDoubt({ places }: Effect): boolean {
    const { effects } = this.#situation;
    const goods = places.filter((place) => effects.places.at(place).product !== '');
    const telling = goods.length > 0 ? goods : places;
    return telling.some((place) => this.#situation.offAt(place) !== 0);
  }

  #change(sort: Sort, record: MovementRecord, becomes: MovementRecord, ways: number): void {
    const effect = this.#situation.effects.change(record, becomes);
    const chance = errorModel[sort].rate / Math.max(1, ways);
    this.#taking.take(effect, 1, { sort, chance, record, becomes });
  }
}

/** Days between a stall and the one it may have been settled as. */
const NEAR_STALL_DAYS = 14;

function heldIn(record: MovementRecord, { part, seller }: NumberField, product: string): number {
  const held = Reflect.get(record, part) ?? {};
  if (seller === undefined) return unitsOf(held, product);
  return Object.hasOwn(held, seller) ? unitsOf(held[seller], product) : 0;
}
