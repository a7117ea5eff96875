import { addDays } from '../../base/day.ts';
import { sortedEntries } from '../../base/order.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { stepOn } from '../../ledger/prices.ts';
import type { Lines } from '../../records/fields.ts';
import type { MovementRecord } from '../../records/record.ts';
import { type Effect, effectOf } from '../../solvers/gap/effect.ts';
import type { LedgerName } from '../postings-of.ts';
import { Effects } from './effects.ts';
import { type NumberField, numberFields } from './number-fields.ts';
import { differencesIn, type ObservedAccount } from './observation.ts';
import { Places } from './places.ts';

/** A book, what was seen of it, and where the two differ: what all searching starts from. */
export class Situation {
  readonly ledger: Ledger;
  /** The day of the observation; undefined where it is of the whole book. */
  readonly day: string | undefined;
  /** Movements that count, by day; those after the day of the observation are not here. */
  readonly entries: readonly MovementRecord[];
  /** Movements dated up to a few days after the day of the observation. */
  readonly later: readonly MovementRecord[];
  /** Effects on the balances that were looked at. */
  readonly effects: Effects;
  /** Observed less book, at the balances that were looked at. */
  readonly difference: Effect;
  readonly products: readonly string[];
  readonly sellers: readonly string[];
  readonly #amounts = new Map<number, number>();
  readonly #fromUnseen = new Map<string, number>();
  readonly #hotProducts = new Set<string>();
  readonly #hotAccounts = new Set<string>();
  readonly #seenAccounts = new Set<string>();
  readonly #doubtful: readonly boolean[];
  readonly #seenSellers: ReadonlySet<string>;
  readonly #offSellers: ReadonlySet<string>;
  readonly #settled = new Map<MovementRecord, boolean>();
  readonly #fields = new Map<MovementRecord, readonly NumberField[]>();
  /** True where nobody looked at money, and where nobody looked at any other party's account. */
  readonly #isMoneyUnseen: boolean;
  readonly #arePartiesUnseen: boolean;

  constructor(ledger: Ledger, observed: readonly ObservedAccount[], day: string | undefined) {
    this.ledger = ledger;
    this.day = day;
    const movements = ledger.movements();
    const isBy = (movement: MovementRecord) => day === undefined || movement.date <= day;
    this.entries = movements.filter(isBy);
    const until = day === undefined ? '' : addDays(day, NEAR_DAYS);
    this.later = movements.filter((each) => !isBy(each) && each.date <= until);
    this.products = sortedEntries(ledger.prices).map(([product]) => product);
    this.sellers = [...ledger.setup.sellers.keys()];
    const places = new Places(false);
    this.#note(observed, places);
    this.#doubtful = Array.from({ length: places.size }, (_, place) => {
      const { product } = places.at(place);
      return product === '' || this.#hotProducts.has(product);
    });
    const sellersIn = (accounts: ReadonlySet<string>) =>
      new Set(
        this.sellers.filter((seller) =>
          sellerAccounts(seller).some(([name, account]) => accounts.has(`${name}:${account}`)),
        ),
      );
    const seen = [...this.#seenAccounts];
    this.#isMoneyUnseen = !seen.some((name) => name.startsWith('money:'));
    this.#arePartiesUnseen = !seen.some((name) => PARTY.test(name));
    this.#seenSellers = sellersIn(this.#seenAccounts);
    this.#offSellers = sellersIn(this.#hotAccounts);
    this.effects = new Effects(ledger, places, day);
    this.difference = effectOf(this.#amounts);
  }

  /** True where money that was looked at differs. */
  get isMoneyOff(): boolean {
    return this.difference.places.some((at) => this.effects.places.at(at).product === '');
  }

  get agrees(): boolean {
    return this.difference.places.length === 0;
  }

  /** Observed less book of an account; 0 too where nobody looked. */
  off(ledger: LedgerName, account: string, product = ''): number {
    const place = this.effects.places.numberOf(ledger, account, product);
    return place === undefined ? 0 : (this.#amounts.get(place) ?? 0);
  }

  /** Units that came, in all, into the stock accounts that were looked at. */
  fromUnseen(product: string): number {
    return this.#fromUnseen.get(product) ?? 0;
  }

  offAt(place: number): number {
    return this.#amounts.get(place) ?? 0;
  }

  /** True for money, and for goods of a product that differs somewhere. */
  isDoubtful(place: number): boolean {
    return this.#doubtful[place] === true;
  }

  /** True where somebody looked at the account. */
  isSeen(ledger: LedgerName, account: string): boolean {
    return this.#seenAccounts.has(`${ledger}:${account}`);
  }

  /** True where an account was looked at and differs. */
  isOff(ledger: LedgerName, account: string): boolean {
    return this.#hotAccounts.has(`${ledger}:${account}`);
  }

  /** Products of which any goods or credit that were looked at differ. */
  get hotProducts(): ReadonlySet<string> {
    return this.#hotProducts;
  }

  /** Lines that were read off differences already; most families are read off the same ones. */
  readonly readings = new Map<string, readonly Lines[]>();

  /** Pools of credit that differ, without the word pool. */
  readonly offPools = new Set<string>();

  /** True where some account of the seller was looked at. */
  isSellerSeen(seller: string): boolean {
    return this.#seenSellers.has(seller);
  }

  isSellerOff(seller: string): boolean {
    return this.#offSellers.has(seller);
  }

  /**
   * True where a record moved something in an account that was looked at and agrees: neither it nor
   * one of its numbers can be all that is wrong.
   */
  isSettled(record: MovementRecord): boolean {
    if (this.#arePartiesUnseen) return false;
    const known = this.#settled.get(record);
    if (known !== undefined) return known;
    const settled =
      partyAccounts(record).some(
        ([ledger, account]) => this.isSeen(ledger, account) && !this.isOff(ledger, account),
      ) || this.#isOrderSettled(record);
    this.#settled.set(record, settled);
    return settled;
  }

  /** The numbers of a record, made once. */
  fieldsOf(record: MovementRecord): readonly NumberField[] {
    const known = this.#fields.get(record);
    if (known !== undefined) return known;
    const fields = numberFields(record);
    this.#fields.set(record, fields);
    return fields;
  }

  /** True where a record moves nothing, or money alone while nobody looked at money. */
  isApart({ kind }: MovementRecord): boolean {
    return STILL.has(kind) || (this.#isMoneyUnseen && MONEY_ALONE.has(kind));
  }

  /**
   * True where one line of a record is of goods that were looked at and agree: then the record as a
   * whole, there or not or turned round, cannot be all that is wrong.
   */
  isLineSettled(record: MovementRecord): boolean {
    if (!ONE_WAY.has(record.kind)) return false;
    return this.fieldsOf(record).some(
      (field) => field.value !== 0 && this.isSettledProduct(record, field),
    );
  }

  /** True where goods of the product were looked at wherever this number moves them, and agree. */
  isSettledProduct(record: MovementRecord, field: NumberField): boolean {
    const { product } = field;
    if (product === undefined || this.#hotProducts.has(product)) return false;
    return this.effects.isGoodsSeen(record, field);
  }

  /**
   * True where a record is of a family or a neighbour that was asked, and all that was asked
   * agrees: it is not looked for among several mistakes either.
   */
  isPartySettled(record: MovementRecord): boolean {
    if (record.kind === 'swap-in' || record.kind === 'swap-out') return this.isSettled(record);
    const sellers = record.kind === 'pass' ? [record.from, record.to] : sellerOf(record);
    return sellers.some((seller) => this.isSellerSeen(seller) && !this.isSellerOff(seller));
  }

  /** Orders and gifts move one or the other account of their seller. */
  #isOrderSettled(record: MovementRecord): boolean {
    return (record.kind === 'gift' || record.kind === 'online') && this.isPartySettled(record);
  }

  /** Units a case on a day; 1 where the product is unknown. */
  caseUnits(product: string, day: string): number {
    return stepOn(this.ledger.prices.get(product) ?? [], day)?.caseUnits ?? 1;
  }

  #note(observed: readonly ObservedAccount[], places: Places): void {
    const { day, ledger } = this;
    const balances = day === undefined ? ledger.balances : ledger.asOf(day);
    for (const each of observed) {
      const name = `${each.ledger}:${each.account}`;
      this.#seenAccounts.add(name);
      const goods = each.ledger === 'money' ? [] : this.products;
      for (const product of goods) places.add(each.ledger, each.account, product);
      for (const [product, amount] of differencesIn(each, balances)) {
        const place = places.add(each.ledger, each.account, product);
        if (amount === 0) continue;
        this.#amounts.set(place, amount);
        this.#hotAccounts.add(name);
        if (name.startsWith(POOL)) this.offPools.add(name.slice(POOL.length));
        if (product !== '') this.#hotProducts.add(product);
        if (each.ledger === 'stock') {
          this.#fromUnseen.set(product, this.fromUnseen(product) + amount);
        }
      }
    }
  }
}

/** Kinds that move nothing, and kinds whose every number and every other way moves money alone. */
const STILL: ReadonlySet<string> = new Set(['order', 'supply-order', 'exchange', 'count']);
const MONEY_ALONE: ReadonlySet<string> = new Set([
  'payment',
  'refund',
  'deposit',
  'card-settle',
  'debit',
  'debit-returned',
  'bank-fee',
  'bounced',
  'settle',
]);
/** Kinds with one number a product, so that no two of its numbers can undo each other. */
const ONE_WAY: ReadonlySet<string> = new Set([
  'delivery',
  'swap-in',
  'swap-out',
  'handover',
  'return',
]);
/** Accounts of a party of `partyAccounts` and of orders. */
const PARTY = /^(?:stock:(?:seller:|neighbour:|supplier$)|money:owed:|credit:(?:seller|pool):)/;

/** Days around a cut-off within which a wrong day is looked for. */
export const NEAR_DAYS = 4;

const POOL = 'credit:pool:';

function sellerAccounts(seller: string): readonly (readonly [LedgerName, string])[] {
  return [
    ['stock', `seller:${seller}`],
    ['money', `owed:${seller}`],
    ['credit', `seller:${seller}`],
  ];
}

/** Accounts of the other party that every number of a record moves. */
function partyAccounts(record: MovementRecord): readonly (readonly [LedgerName, string])[] {
  switch (record.kind) {
    case 'handover':
    case 'return':
      return sellerAccounts(record.seller);
    case 'pass':
      return [...sellerAccounts(record.from), ...sellerAccounts(record.to)];
    case 'payment':
    case 'refund':
      return [['money', `owed:${record.seller}`]];
    case 'swap-in':
    case 'swap-out':
      return [['stock', `neighbour:${record.neighbour}`]];
    case 'delivery':
      return [['stock', 'supplier']];
    case 'shareout':
      return [['credit', `pool:${record.pool}`]];
    default:
      return [];
  }
}

function sellerOf(record: MovementRecord): readonly string[] {
  return 'seller' in record && record.seller !== undefined ? [record.seller] : [];
}
