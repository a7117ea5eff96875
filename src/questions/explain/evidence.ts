import type { Ledger } from '../../ledger/ledger.ts';
import { priceOfLines, soldAtStall, takingsAtStall } from '../../ledger/posting.ts';
import type { Lines } from '../../records/fields.ts';
import type { MovementKind, MovementRecord, RecordOf } from '../../records/record.ts';
import { unitsOf } from '../../records/units-of.ts';
import { EarlierCounts } from './earlier-counts.ts';
import { Effects } from './effects.ts';
import { circumstances } from './error-model.ts';
import type { Habits } from './habits.ts';
import { type Hypothesis, outcomeOf } from './hypothesis.ts';
import { bookOf, paperGaps, paperOf } from './paper-gaps.ts';
import { Places } from './places.ts';
import type { Situation } from './situation.ts';

/**
 * What the book says for or against a mistake, as factors on its chance: how usual the numbers are,
 * what orders, counts, takings and papers say, and whether the book makes sense afterwards. All
 * factors are assumed; simulation/mistakes measures what they do.
 */
export class Evidence {
  readonly #situation: Situation;
  readonly #ledger: Ledger;
  readonly #habits: Habits;
  /** Effects on every balance there is, seen or not. */
  readonly #all: Effects;
  readonly #counts: EarlierCounts;
  #ordered: Map<string, RecordOf<'order'>[]> | undefined;
  #deliveries: ReadonlyMap<string, ReadonlySet<number>> | undefined;
  #papers: ReturnType<typeof paperGaps> | undefined;

  constructor(situation: Situation, habits: Habits) {
    this.#situation = situation;
    this.#ledger = situation.ledger;
    this.#habits = habits;
    this.#all = new Effects(situation.ledger, new Places(true), situation.day);
    this.#counts = new EarlierCounts(situation);
  }

  /** The chance of the mistake given the book; not yet compared with other mistakes. */
  weigh(hypothesis: Hypothesis): number {
    const { before, after } = outcomeOf(hypothesis);
    let weight = hypothesis.chance * this.#numbers(hypothesis) * this.#balancesAfter(hypothesis);
    weight *= this.#counts.factor(hypothesis);
    if (hypothesis.sort === 'doubled') weight *= this.#double(hypothesis);
    if (before?.kind === 'handover' || after?.kind === 'handover') {
      weight *= this.#orders(before, after);
    }
    if (before !== undefined && after !== undefined) weight *= this.#ownFigures(before, after);
    if (hypothesis.sort === 'wrong-product') weight *= this.#lookAlike(hypothesis);
    if (hypothesis.sort === 'wrong-seller') weight *= this.#siblings(before, after);
    if (hypothesis.sort === 'wrong-way') weight *= this.#otherKind(before, after);
    if (hypothesis.sort === 'not-ours' && hasPaper(before)) weight *= 0.2;
    if (hypothesis.sort === 'missing' && after !== undefined) weight *= this.#gaps(after.kind);
    return weight;
  }

  /** What a mistake changes at every balance, by place of `places`. */
  effectOn(hypothesis: Hypothesis): ReturnType<Effects['whole']> {
    const { before, after } = outcomeOf(hypothesis);
    if (before !== undefined) return this.#all.change(before, after);
    return after === undefined ? NOTHING : this.#all.whole(after);
  }

  get places(): Places {
    return this.#all.places;
  }

  #numbers({ sort, record, field, to }: Hypothesis): number {
    if (record === undefined || field === undefined || to === undefined) return 1;
    const { kind } = record;
    const { part, value } = field;
    if (sort === 'line-left-out' || sort === 'number-left-out' || sort === 'other-amount') {
      return this.#habits.chanceOf(kind, part, to, value);
    }
    if (sort === 'line-too-many') return 1;
    const ratio =
      this.#habits.chanceOf(kind, part, to, value) /
      this.#habits.chanceOf(kind, part, value, value);
    return between(ratio, 0.001, 1000);
  }

  /** Balances that cannot be below zero, and those that are zero when all is done. */
  #balancesAfter(hypothesis: Hypothesis): number {
    const effect = this.effectOn(hypothesis);
    const { balances } = this.#ledger;
    let factor = 1;
    for (let at = 0; at < effect.places.length; at += 1) {
      const { ledger, account, product } = this.#all.places.at(effect.places[at] ?? 0);
      if (this.#situation.isSeen(ledger, account)) continue;
      const before =
        ledger === 'money'
          ? balances.moneyOf(account)
          : ledger === 'stock'
            ? balances.stockOf(account, product)
            : balances.creditOf(account, product);
      factor *= plausibility(ledger, account, before, before + (effect.amounts[at] ?? 0));
    }
    return between(factor, 0.001, 100);
  }

  /** How unlikely it is that two records are alike by chance. */
  #double({ record, twin }: Hypothesis): number {
    if (record === undefined || twin === undefined) return 1;
    const alike =
      'lines' in record && record.kind !== 'shareout' && record.lines !== undefined
        ? this.#habits.chanceOfLines(record.kind, record.lines)
        : 0.02;
    const ways = this.#habits.countOf(record.kind) / Math.max(1, this.#situation.sellers.length);
    const byChance = Math.max(0.001, Math.min(1, ways * alike));
    const [paper, other] = [paperOf(record), paperOf(twin)];
    const papers = paper === undefined || other === undefined ? 1 : paper === other ? 10 : 0.1;
    const days = record.date === twin.date ? 1 : 0.4;
    return (papers * days) / byChance;
  }

  /**
   * Numbers missing in the kind's papers, for or against a missing record. With so many gaps where
   * spoiled papers alone would leave few, one more record that is missing is likelier in proportion
   * (Poisson counts); a record that had no paper leaves no gap.
   */
  #gaps(kind: MovementKind): number {
    this.#papers ??= paperGaps(this.#ledger);
    const gaps = this.#papers.get(bookOf(kind));
    if (gaps === undefined) return 1;
    const { spoiledPaper, withoutPaper } = circumstances;
    // The first and the last of a series are missing without a gap.
    const within = Math.max(0, 1 - 2 / (gaps.numbers + 1));
    const leavesGap = gaps.carried * (1 - withoutPaper.rate) * within;
    const expected = Math.max(GAPS_LEAST, gaps.numbers * spoiledPaper.rate);
    const ratio = Math.min(GAP_RATIO_MOST, gaps.missing.length / expected);
    return leavesGap * ratio + (1 - leavesGap);
  }

  /** Goods out against what the family had ordered. */
  #orders(before: MovementRecord | undefined, after: MovementRecord | undefined): number {
    let factor = 1;
    if (before?.kind === 'handover') factor /= this.#orderFit(before);
    if (after?.kind === 'handover') factor *= this.#orderFit(after);
    return between(factor, 0.02, 200);
  }

  /** How well a handover fits what its family ordered: 1 where nothing is known. */
  #orderFit({ seller, lines }: RecordOf<'handover'>): number {
    const orders = this.#ordersOf(seller);
    if (orders.length === 0) return 1;
    const units = Object.entries(lines);
    const isWhole = orders.some((order) => isSameLines(order.lines, lines));
    if (isWhole) return 12;
    let fit = 1;
    for (const [product, count] of units) {
      if (orders.some((order) => unitsOf(order.lines, product) === count)) fit *= 2;
    }
    return Math.min(fit, 6);
  }

  #ordersOf(seller: string): readonly RecordOf<'order'>[] {
    this.#ordered ??= this.#ordersBySeller();
    return this.#ordered.get(seller) ?? [];
  }

  #ordersBySeller(): Map<string, RecordOf<'order'>[]> {
    const found = new Map<string, RecordOf<'order'>[]>();
    for (const record of this.#situation.entries) {
      if (record.kind !== 'order') continue;
      const orders = found.get(record.seller) ?? [];
      found.set(record.seller, orders);
      orders.push(record);
    }
    return found;
  }

  /** A record's own figures: price and paid, sold and taken, cash and tally, full cases. */
  #ownFigures(before: MovementRecord, after: MovementRecord): number {
    let factor = 1;
    if (after.kind === 'online' && before.kind === 'online') {
      factor *= step(this.#isPaidPrice(before), this.#isPaidPrice(after), 50);
    }
    if (after.kind === 'stall-close' && before.kind === 'stall-close') {
      factor *= this.#stallFit(after) / this.#stallFit(before);
      factor *= step(isTallied(before), isTallied(after), 50);
      if (before.counters !== undefined) factor *= COUNTED_BY_TWO;
    }
    if (after.kind === 'delivery' && before.kind === 'delivery') {
      factor *= this.#deliveryFit(after) / this.#deliveryFit(before);
    }
    return between(factor, 0.001, 1000);
  }

  #isPaidPrice(record: RecordOf<'online'>): boolean {
    const price = [record.lines, record.gifts ?? {}].reduce(
      (sum, lines) => sum + priceOfLines(lines, record.date, this.#ledger),
      0,
    );
    return price === record.paid;
  }

  /** A stall's takings are mostly what it sold, now and then a little short or over. */
  #stallFit(record: RecordOf<'stall-close'>): number {
    const sold = soldAtStall(record);
    const should = priceOfLines(sold, record.date, this.#ledger);
    const off = Math.abs(takingsAtStall(record) - should);
    const isPossible = Object.values(sold).every((units) => units >= 0);
    const fit = (off === 0 ? 0.6 : 0) + 0.2 * Math.exp(-off / 300) + 0.02 * Math.exp(-off / 3000);
    return (fit + 0.0005) * (isPossible ? 1 : 0.02);
  }

  #deliveryFit(record: RecordOf<'delivery'>): number {
    this.#deliveries ??= this.#orderedFromSupplier();
    let fit = 1;
    for (const [product, units] of Object.entries(record.lines)) {
      if (this.#deliveries.get(product)?.has(units)) fit *= 5;
      if (units % this.#situation.caseUnits(product, record.date) === 0) fit *= 3;
    }
    return fit;
  }

  #orderedFromSupplier(): Map<string, Set<number>> {
    const found = new Map<string, Set<number>>();
    for (const record of this.#situation.entries) {
      if (record.kind !== 'supply-order') continue;
      for (const [product, units] of Object.entries(record.lines)) {
        found.set(product, (found.get(product) ?? new Set()).add(units));
      }
    }
    return found;
  }

  /** Products whose names share a word are taken for each other. */
  #lookAlike({ field, becomes, record }: Hypothesis): number {
    if (becomes === undefined || record === undefined || field?.product === undefined) return 1;
    const { products } = this.#ledger.setup;
    const words = (id: string) =>
      new Set(`${id} ${products.get(id)?.name ?? ''}`.split(/[^\p{L}]+/u));
    const old = words(field.product);
    const held: Lines = Reflect.get(becomes, field.part) ?? {};
    const was: Lines = Reflect.get(record, field.part) ?? {};
    const grown = Object.keys(held).find((id) => unitsOf(held, id) > unitsOf(was, id));
    const shares = [...words(grown ?? '')].some((word) => word.length > 2 && old.has(word));
    return shares ? 3 : 0.7;
  }

  /** Children of one family are taken for each other. */
  #siblings(before: MovementRecord | undefined, after: MovementRecord | undefined): number {
    const { sellers } = this.#ledger.setup;
    const [one, two] = [sellerIn(before), sellerIn(after)].map((id) => sellers.get(id ?? ''));
    return one !== undefined && one.family === two?.family ? 4 : 1;
  }

  #otherKind(before: MovementRecord | undefined, after: MovementRecord | undefined): number {
    if (before === undefined || after === undefined || before.kind === after.kind) return 1;
    const counts = (this.#habits.countOf(after.kind) + 1) / this.#habits.countOf(before.kind);
    return between(counts, 0.1, 10);
  }
}

const NOTHING = { places: [], amounts: [], one: 0, two: 0 } as const;
/** Fewest gaps that are expected of spoiled papers, and the most that gaps speak for a record. */
const GAPS_LEAST = 0.1;
const GAP_RATIO_MOST = 10;
/** Two who count find about 60 % of each other's slips: trade sources on second-person checks. */
const COUNTED_BY_TWO = 0.4;

function plausibility(ledger: string, account: string, before: number, after: number): number {
  if (ledger !== 'money') {
    const holds =
      account === 'stockroom' || account.startsWith('seller:') || account.startsWith('pool:');
    if (holds && after < 0 && after < before) return 0.05;
    if (holds && before < 0 && after >= 0) return 10;
    return account.startsWith('pool:') ? zero(before, after, 10) : 1;
  }
  if (account.startsWith('owed:')) return zero(before, after, 20);
  if (account === 'cashbox' || account === 'cards') {
    return after < 0 && after < before ? 0.1 : zero(before, after, 2);
  }
  return account === 'buyers' || account === 'supplier' ? zero(before, after, 3) : 1;
}

function zero(before: number, after: number, times: number): number {
  if ((before === 0) === (after === 0)) return 1;
  return after === 0 ? times : 1 / times;
}

function step(was: boolean, becomes: boolean, times: number): number {
  return was === becomes ? 1 : becomes ? times : 1 / times;
}

function isTallied({ tally, cash }: RecordOf<'stall-close'>): boolean {
  if (tally === undefined) return false;
  let tallied = 0;
  for (const value in tally) tallied += Number(value) * (tally[value] ?? 0);
  return tallied === cash;
}

function isSameLines(a: Lines, b: Lines): boolean {
  const names = Object.keys(a);
  if (names.length !== Object.keys(b).length) return false;
  return names.every((name) => unitsOf(a, name) === unitsOf(b, name));
}

function sellerIn(record: MovementRecord | undefined): string | undefined {
  return record !== undefined && 'seller' in record ? record.seller : undefined;
}

function hasPaper(record: MovementRecord | undefined): boolean {
  return record !== undefined && paperOf(record) !== undefined;
}

function between(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
