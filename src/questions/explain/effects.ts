import type { Ledger } from '../../ledger/ledger.ts';
import { type Mover, type PostingContext, post } from '../../ledger/posting.ts';
import type { MovementRecord } from '../../records/record.ts';
import { type Effect, effectOf } from '../../solvers/gap/effect.ts';
import { type NumberField, withNumber, withoutNumbers } from './number-fields.ts';
import type { Places } from './places.ts';

/**
 * What records, and changes to them, do to the balances that were looked at. Uses the ledger's own
 * posting rules; what one unit does is kept, since most records of a season do the same things.
 */
export class Effects {
  readonly #ledger: Ledger;
  readonly #places: Places;
  readonly #day: string | undefined;
  readonly #collecting: Collecting;
  /** By who the record is about, part or seller, product, and price of the day. */
  readonly #units = new Map<string, Map<string, Map<string, Map<number, Effect>>>>();
  readonly #goodsSeen = new Map<string, Map<string, boolean>>();
  /** The record that was asked about last, with its part of both maps: most come in a row. */
  #last: MovementRecord | undefined;
  #lastUnits = new Map<string, Map<string, Map<number, Effect>>>();
  #lastSeen = new Map<string, boolean>();
  #followers: Map<string, MovementRecord[]> | undefined;

  /** @param day balances at the end of this day; without it, of the whole book */
  constructor(ledger: Ledger, places: Places, day: string | undefined) {
    this.#ledger = ledger;
    this.#places = places;
    this.#day = day;
    this.#collecting = new Collecting(ledger, places, day);
  }

  get places(): Places {
    return this.#places;
  }

  /** What a record posts. */
  whole(record: MovementRecord): Effect {
    return this.#collecting.of(record, this.#context);
  }

  /**
   * What it does when another record stands in a record's place, or none; what points at it, a
   * bounced cheque or a returned debit, follows.
   */
  change(record: MovementRecord, becomes: MovementRecord | undefined): Effect {
    const amounts = new Map<number, number>();
    const collect = (each: MovementRecord, times: number, context: PostingContext): void => {
      this.#collecting.into(amounts, each, times, context);
    };
    if (this.#isSeen(record)) collect(record, -1, this.#context);
    if (becomes !== undefined && this.#isSeen(becomes)) collect(becomes, 1, this.#context);
    const followers = this.#followersOf(record);
    if (followers.length > 0) {
      const after = this.#contextWith(record.id, becomes);
      for (const follower of followers) {
        collect(follower, -1, this.#context);
        collect(follower, 1, after);
      }
    }
    return effectOf(amounts);
  }

  /** What one more in a number of a record does. */
  unit(record: MovementRecord, field: NumberField): Effect {
    if (this.#followersOf(record).length > 0 && field.part === 'cents') {
      return this.change(record, withNumber(record, field, field.value + 1));
    }
    const { part, product, seller } = field;
    const price = product === undefined ? 0 : this.#ledger.priceOn(product, record.date);
    this.#turnTo(record);
    const byPrice = inner(inner(this.#lastUnits, seller ?? part), product ?? '');
    const known = byPrice.get(price);
    if (known !== undefined) return known;
    const single = withNumber(withoutNumbers(record), field, 1);
    const effect = this.#collecting.of(single, this.#contextWithoutCents);
    byPrice.set(price, effect);
    return effect;
  }

  /**
   * True where a unit of goods shows in stock or credit that was looked at. That depends on the
   * accounts alone, so it is known for every product once it is for one.
   */
  isGoodsSeen(record: MovementRecord, field: NumberField): boolean {
    this.#turnTo(record);
    const part = field.seller ?? field.part;
    const known = this.#lastSeen.get(part);
    if (known !== undefined) return known;
    const { places } = this.unit(record, field);
    const isSeen = places.some((place) => this.#places.at(place).product !== '');
    this.#lastSeen.set(part, isSeen);
    return isSeen;
  }

  #turnTo(record: MovementRecord): void {
    if (this.#last === record) return;
    this.#last = record;
    const parties = partiesOf(record, this.#named);
    this.#lastUnits = inner(this.#units, parties);
    this.#lastSeen = inner(this.#goodsSeen, parties);
  }

  /** A record dated after the day of the balances does nothing to them. */
  #isSeen(record: MovementRecord): boolean {
    return this.#day === undefined || record.date <= this.#day;
  }

  #followersOf(record: MovementRecord): readonly MovementRecord[] {
    if (record.kind !== 'payment' && record.kind !== 'debit') return [];
    this.#followers ??= this.#findFollowers();
    return this.#followers.get(record.id) ?? [];
  }

  #findFollowers(): Map<string, MovementRecord[]> {
    const found = new Map<string, MovementRecord[]>();
    for (const movement of this.#ledger.movements()) {
      if (!this.#isSeen(movement)) continue;
      const id =
        movement.kind === 'bounced'
          ? movement.payment
          : movement.kind === 'debit-returned'
            ? movement.debit
            : undefined;
      const current = id === undefined ? undefined : this.#ledger.standing.currentOf(id)?.id;
      if (current === undefined) continue;
      const followers = found.get(current) ?? [];
      found.set(current, followers);
      followers.push(movement);
    }
    return found;
  }

  #contextWith(id: string, becomes: MovementRecord | undefined): PostingContext {
    const currentId = (each: string) => this.#ledger.standing.currentOf(each)?.id;
    return {
      priceOn: this.#context.priceOn,
      paymentOf: (each) =>
        currentId(each) !== id
          ? this.#context.paymentOf(each)
          : becomes?.kind === 'payment'
            ? becomes
            : undefined,
      debitOf: (each) =>
        currentId(each) !== id
          ? this.#context.debitOf(each)
          : becomes?.kind === 'debit'
            ? becomes
            : undefined,
    };
  }

  /** Somebody and nobody are two: what is of nobody named moves other accounts. */
  readonly #named: Named = (party) =>
    party === undefined ? '-' : this.#places.hasPartOf(party) ? `=${party}` : '*';

  readonly #context: PostingContext = {
    priceOn: (product, day) => this.#ledger.priceOn(product, day),
    paymentOf: (id) => {
      const record = this.#ledger.standing.currentOf(id);
      return record?.kind === 'payment' ? record : undefined;
    },
    debitOf: (id) => {
      const record = this.#ledger.standing.currentOf(id);
      return record?.kind === 'debit' ? record : undefined;
    },
  };

  /** For the part of a bounce or a returned debit that its own numbers post. */
  readonly #contextWithoutCents: PostingContext = {
    priceOn: this.#context.priceOn,
    paymentOf: (id) => {
      const payment = this.#context.paymentOf(id);
      return payment === undefined ? undefined : { seller: payment.seller, cents: 0 };
    },
    debitOf: () => undefined,
  };
}

/** A party whose accounts have places by its own name; any other by none: all of them are alike. */
type Named = (party: string | undefined) => string;

/** Kind and accounts: with the price of the day, all that decides what a unit posts. */
function partiesOf(record: MovementRecord, named: Named): string {
  switch (record.kind) {
    case 'handover':
    case 'return':
    case 'loss':
      return `${record.kind} ${named(record.seller)}`;
    case 'pass':
      return `pass ${named(record.from)} ${named(record.to)}`;
    case 'swap-in':
    case 'swap-out':
      return `${record.kind} ${named(record.neighbour)}`;
    case 'payment':
    case 'refund':
      return `${record.kind} ${named(record.seller)} ${record.tender}`;
    case 'gift':
      return `gift ${named(record.seller)} ${record.from}`;
    case 'online':
      return `online ${named(record.seller)} ${record.sent}`;
    case 'stall-close':
      return `stall-close ${named(record.stall)}`;
    case 'shareout':
      return `shareout ${record.pool}`;
    case 'card-settle':
      return `card-settle ${record.to}`;
    case 'bounced':
      return `bounced ${record.charge} ${record.payment}`;
    default:
      return record.kind;
  }
}

function inner<K, V>(maps: Map<string, Map<K, V>>, key: string): Map<K, V> {
  const known = maps.get(key);
  if (known !== undefined) return known;
  const made = new Map<K, V>();
  maps.set(key, made);
  return made;
}

/** Adds up moves at the balances that have a number, revalued like the ledger revalues them. */
class Collecting implements Mover {
  readonly #ledger: Ledger;
  readonly #places: Places;
  readonly #day: string | undefined;
  #amounts = new Map<number, number>();
  #times = 1;
  #date = '';

  constructor(ledger: Ledger, places: Places, day: string | undefined) {
    this.#ledger = ledger;
    this.#places = places;
    this.#day = day;
  }

  of(record: MovementRecord, context: PostingContext): Effect {
    const amounts = new Map<number, number>();
    this.into(amounts, record, 1, context);
    return effectOf(amounts);
  }

  into(
    amounts: Map<number, number>,
    record: MovementRecord,
    times: number,
    context: PostingContext,
  ): void {
    this.#amounts = amounts;
    this.#times = times;
    this.#date = record.date;
    post(record, context, this);
  }

  stock(product: string, units: number, from: string, to: string): void {
    this.#add('stock', from, product, -units);
    this.#add('stock', to, product, units);
    if (to === 'stockroom') this.#revalue(product, units);
    if (from === 'stockroom') this.#revalue(product, -units);
  }

  money(minor: number, from: string, to: string): void {
    if (minor === 0) return;
    this.#add('money', from, '', -minor);
    this.#add('money', to, '', minor);
  }

  credit(product: string, units: number, from: string, to: string): void {
    this.#add('credit', from, product, -units);
    this.#add('credit', to, product, units);
  }

  #revalue(product: string, entering: number): void {
    if ((this.#ledger.prices.get(product)?.length ?? 0) < 2) return;
    const rise =
      this.#ledger.priceOn(product, this.#day) - this.#ledger.priceOn(product, this.#date);
    this.money(entering * rise, 'losses', 'goods');
  }

  #add(ledger: 'stock' | 'money' | 'credit', account: string, product: string, by: number): void {
    const place = this.#places.numberOf(ledger, account, product);
    if (place === undefined) return;
    this.#amounts.set(place, (this.#amounts.get(place) ?? 0) + this.#times * by);
  }
}
