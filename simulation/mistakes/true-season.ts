import { addDays } from '../../src/base/day.ts';
import { type Seeded, seeded } from '../../src/base/seeded.ts';
import { Ledger } from '../../src/ledger/ledger.ts';
import type { Lines } from '../../src/records/fields.ts';
import type { BookRecord, Kind, RecordOf } from '../../src/records/record.ts';
import { Device, type Saying } from '../device.ts';

/**
 * A season as it really goes, without a mistake in it: orders are handed in, goods come in cases,
 * go out as ordered and again week by week, stalls take what they sell, families pay what they owe.
 * Mistakes are planted in copies of it. The same seed gives the same season: every third with
 * orders and counts, every third without counts, every third with neither.
 * @param size how many times a small group's families, and what they do
 */
export function trueSeason(seed: number, size = 1): BookRecord[] {
  const papers = { orders: seed % 3 !== 2, counts: seed % 3 === 0 };
  const season = new TrueSeason(seed, papers, size);
  season.setUp();
  season.orders();
  for (let week = 1; week <= WEEKS; week += 1) season.week(week);
  season.lastWeek();
  return season.records;
}

interface Papers {
  readonly orders: boolean;
  readonly counts: boolean;
}

const FIRST_DAY = '2027-02-01';
const WEEKS = 8;
const NAMES = ['Zoë', 'Nuño', 'Mei', 'Tobi', 'Inés', 'Réka', 'Jun', 'Ada', 'Petr', 'Rui'];

class TrueSeason {
  readonly records: BookRecord[] = [];
  readonly #random: Seeded;
  readonly #devices: readonly Device[];
  readonly #ledger = Ledger.of([]);
  readonly #products: string[] = [];
  readonly #cases = new Map<string, number>();
  readonly #sellers: string[] = [];
  readonly #neighbours = ['fernhill', 'millbrook'];
  readonly #ordered = new Map<string, Lines>();
  #day = FIRST_DAY;
  #minute = 0;
  /** The last number of each book of papers, by its letter. */
  readonly #papers = new Map<string, number>();

  readonly #has: Papers;
  readonly #size: number;

  constructor(seed: number, has: Papers, size: number) {
    this.#has = has;
    this.#size = size;
    this.#random = seeded(seed);
    this.#devices = [1, 2, 3].map(
      (each) => new Device(`device-${each}`, 0, seeded(seed * 7 + each)),
    );
  }

  setUp(): void {
    const { whole, pick } = this.#random;
    const ends = addDays(FIRST_DAY, (WEEKS + 1) * 7);
    this.#write('season', { name: 'Made season', currency: 'USD', starts: FIRST_DAY, ends });
    for (let each = whole(6, 10); each > 0; each -= 1) {
      const product = `product-${each}`;
      const units = pick([6, 12, 12, 24]);
      this.#products.push(product);
      this.#cases.set(product, units);
      const price = whole(9, 24) * 50;
      this.#write('product', { product, name: `Product ${each}`, price, case: units });
    }
    for (const host of ['market', 'bakery']) this.#write('host', { host, name: `Shop ${host}` });
    for (const neighbour of this.#neighbours) {
      this.#write('neighbour', { neighbour, name: `Group of ${neighbour}` });
    }
    for (let family = whole(9, 15) * this.#size; family > 0; family -= 1) this.#family(family);
  }

  orders(): void {
    this.#startDay(addDays(FIRST_DAY, 2));
    const all: Record<string, number> = {};
    for (const seller of this.#sellers) {
      const lines = this.#someLines(5, 12);
      this.#ordered.set(seller, lines);
      if (this.#has.orders) this.#write('order', { date: this.#day, seller, lines });
      for (const product in lines) all[product] = (all[product] ?? 0) + (lines[product] ?? 0);
    }
    const lines = this.#inCases(all, 1.6);
    if (this.#has.orders) {
      this.#write('supply-order', { date: this.#day, lines, slip: this.#paper('W') });
    }
    this.#startDay(addDays(FIRST_DAY, 7));
    this.#write('delivery', { date: this.#day, lines, slip: this.#paper('L') });
    for (const [seller, ordered] of this.#ordered) {
      this.#write('handover', { date: this.#day, seller, lines: ordered, slip: this.#paper('G') });
    }
    this.#count();
  }

  week(week: number): void {
    const start = addDays(FIRST_DAY, 7 + week * 6);
    const random = this.#random;
    this.#startDay(start);
    this.#restock();
    this.#times(random.whole(3, 6), () => this.#handOut());
    this.#times(1, () => random.chance(70) && this.#takeBack());
    this.#times(1, () => random.chance(35) && this.#passOn());
    this.#startDay(addDays(start, 1));
    this.#times(random.whole(1, 3), () => this.#online());
    this.#times(random.whole(3, 6), () => this.#pay());
    if (random.chance(50)) this.#swap();
    this.#startDay(addDays(start, 3));
    const stalls: string[] = [];
    this.#times(1, () => stalls.push(this.#stall(stalls.length)));
    this.#startDay(addDays(start, 4));
    for (const stall of stalls) this.#shareOut(`stall:${stall}`);
    this.#bank();
    if (week % 3 === 0) this.#count();
    if (week === 4 || week === 7) this.#debit();
    if (week === 5) this.#unusual();
  }

  lastWeek(): void {
    this.#startDay(addDays(FIRST_DAY, (WEEKS + 1) * 7 - 2));
    for (const pool of ['post', 'gift']) this.#shareOut(pool);
    for (const seller of this.#sellers) {
      if (this.#random.chance(60)) this.#pay(seller);
    }
    this.#bank();
  }

  #times(count: number, act: () => unknown): void {
    for (let each = count * this.#size; each > 0; each -= 1) act();
  }

  #handOut(): void {
    const seller = this.#random.pick(this.#sellers);
    const lines = this.#onShelf(this.#someLines(3, 12));
    if (Object.keys(lines).length === 0) return;
    this.#write('handover', { date: this.#day, seller, lines, slip: this.#paper('G') });
  }

  #takeBack(): void {
    const seller = this.#random.pick(this.#sellers);
    const held = this.#ledger.balances.linesOf('stock', `seller:${seller}`);
    const lines: Record<string, number> = {};
    for (const product of this.#random.shuffle(Object.keys(held)).slice(0, 2)) {
      if ((held[product] ?? 0) > 0) lines[product] = this.#random.whole(1, held[product] ?? 1);
    }
    if (Object.keys(lines).length > 0) this.#write('return', { date: this.#day, seller, lines });
  }

  #passOn(): void {
    const [from = '', to = ''] = this.#random.shuffle(this.#sellers);
    const held = this.#ledger.balances.linesOf('stock', `seller:${from}`);
    const [product] = this.#random.shuffle(Object.keys(held));
    if (product === undefined || (held[product] ?? 0) < 1) return;
    const lines = { [product]: this.#random.whole(1, held[product] ?? 1) };
    this.#write('pass', { date: this.#day, from, to, lines });
  }

  #online(): void {
    const random = this.#random;
    const lines = this.#someLines(2, 4);
    const gifts = random.chance(30) ? this.#someLines(1, 6) : undefined;
    const named = random.chance(65) ? { seller: random.pick(this.#sellers) } : {};
    const order = this.#paper('O');
    const paid = this.#valueOf(lines) + this.#valueOf(gifts ?? {});
    const extra = gifts === undefined ? {} : { gifts };
    this.#write('online', {
      date: this.#day,
      order,
      ...named,
      lines,
      ...extra,
      paid,
      sent: 'post',
    });
    if (gifts === undefined) return;
    const from = random.chance(75) ? 'supplier' : 'stockroom';
    const date = addDays(this.#day, random.whole(0, 2));
    this.#write('gift', { date, order, ...named, lines: gifts, from });
  }

  #pay(who?: string): void {
    const random = this.#random;
    const seller = who ?? random.pick(this.#sellers);
    const owed = this.#ledger.balances.moneyOf(`owed:${seller}`);
    if (owed <= 0) return;
    const cents = random.chance(55) ? owed : Math.min(owed, random.whole(2, 12) * 500);
    const tender = random.pick(['cash', 'cash', 'cheque', 'card'] as const);
    const receipt = this.#paper('R');
    this.#write('payment', { date: this.#day, seller, tender, cents, receipt });
  }

  #swap(): void {
    const neighbour = this.#random.pick(this.#neighbours);
    const isIn = this.#random.chance(50);
    const lines = this.#someLines(2, 12);
    const slip = this.#paper('S');
    if (isIn) this.#write('swap-in', { date: this.#day, neighbour, lines, slip });
    else {
      const held = this.#onShelf(lines);
      if (Object.keys(held).length === 0) return;
      this.#write('swap-out', { date: this.#day, neighbour, lines: held, slip });
    }
  }

  #stall(number: number): string {
    const random = this.#random;
    const stall = `stall-${this.#day.slice(5)}${number === 0 ? '' : `-${number}`}`;
    const shifts = random
      .shuffle(this.#sellers)
      .slice(0, random.whole(2, 4))
      .map((seller) => ({ seller, from: '09:00', to: random.pick(['11:00', '12:30', '13:00']) }));
    const [starts, ends] = [`${this.#day}T09:00`, `${this.#day}T13:00`];
    this.#write('stall', { stall, host: random.pick(['market', 'bakery']), starts, ends, shifts });
    const out = this.#onShelf(this.#someLines(7, 24));
    const back: Record<string, number> = {};
    const sold: Record<string, number> = {};
    for (const product in out) {
      back[product] = random.whole(0, Math.floor((out[product] ?? 0) / 2));
      sold[product] = (out[product] ?? 0) - (back[product] ?? 0);
    }
    const value = this.#valueOf(sold);
    const off = random.chance(20) ? random.whole(-4, 4) * 25 : 0;
    const cards = Math.min(value, this.#valueOf(sold) > 0 ? random.whole(0, 8) * 500 : 0);
    const cheques = random.chance(20) ? Math.min(value - cards, 1500) : 0;
    const cash = Math.max(0, 3000 + value - cards - cheques + off);
    const counters: [string, string] = ['Robin Marsh', 'Zoë Berg'];
    const takings = { float: 3000, cash, cards, cheques, counters };
    this.#write('stall-close', { date: this.#day, stall, out, back, ...takings });
    return stall;
  }

  /** The pool's units dealt out in turn among three sellers, product by product. */
  #shareOut(pool: string): void {
    const held = this.#ledger.balances.linesOf('credit', `pool:${pool}`);
    const sellers = this.#random.shuffle(this.#sellers).slice(0, 3);
    const lines: Record<string, Record<string, number>> = {};
    let turn = 0;
    for (const [product, units] of Object.entries(held)) {
      for (let unit = 0; unit < units; unit += 1) {
        const seller = sellers[turn % sellers.length] ?? '';
        const own = lines[seller] ?? {};
        lines[seller] = own;
        own[product] = (own[product] ?? 0) + 1;
        turn += 1;
      }
    }
    if (turn > 0) this.#write('shareout', { date: this.#day, pool, lines });
  }

  #bank(): void {
    const cash = this.#ledger.balances.moneyOf('cashbox');
    if (cash > 0) this.#write('deposit', { date: this.#day, cents: cash, slip: this.#paper('D') });
    const cards = this.#ledger.balances.moneyOf('cards');
    if (cards <= 0) return;
    const fee = Math.floor(cards / 50);
    this.#write('card-settle', { date: this.#day, cents: cards - fee, fee, to: 'bank' });
  }

  #debit(): void {
    const due = -this.#ledger.balances.moneyOf('supplier');
    if (due <= 0) return;
    const cents = Math.floor((due * 6) / 10);
    this.#write('debit', { date: this.#day, cents, announced: cents });
  }

  /** Things that happen once: a cheque comes back, a fee, goods lost, a payment given back. */
  #unusual(): void {
    const cheques = this.records.filter((each) => each.kind === 'payment');
    const cheque = cheques.find((each) => each.kind === 'payment' && each.tender === 'cheque');
    if (cheque !== undefined) {
      this.#write('bounced', { date: this.#day, payment: cheque.id, fee: 1200, charge: true });
    }
    this.#write('bank-fee', { date: this.#day, cents: 350 });
    const lines = this.#onShelf(this.#someLines(1, 2));
    if (Object.keys(lines).length === 0) return;
    this.#write('loss', { date: this.#day, lines, reason: 'Broken, seen by two' });
  }

  #restock(): void {
    const wanted: Record<string, number> = {};
    for (const product of this.#products) {
      const shelf = this.#ledger.balances.stockOf('stockroom', product);
      const least = 40 * this.#size;
      if (shelf < least) wanted[product] = least * 1.5 - shelf;
    }
    if (Object.keys(wanted).length === 0) return;
    const lines = this.#inCases(wanted, 1);
    this.#write('delivery', { date: this.#day, lines, slip: this.#paper('L') });
  }

  #count(): void {
    if (!this.#has.counts) return;
    const lines: Record<string, number> = {};
    for (const product of this.#products) {
      lines[product] = this.#ledger.balances.stockOf('stockroom', product);
    }
    this.#write('count', { date: this.#day, lines });
  }

  #family(number: number): void {
    const family = `family-${number}`;
    this.#write('family', { family, name: `Family ${number}` });
    for (let child = this.#random.whole(1, 2); child > 0; child -= 1) {
      const seller = `seller-${number}-${child}`;
      this.#sellers.push(seller);
      const name = `${this.#random.pick(NAMES)} ${String.fromCharCode(65 + ((number - 1) % 26))}.`;
      this.#write('seller', { seller, name, family, active: true });
    }
  }

  #inCases(wanted: Lines, times: number): Record<string, number> {
    const lines: Record<string, number> = {};
    for (const product in wanted) {
      const units = this.#cases.get(product) ?? 1;
      lines[product] = Math.ceil(((wanted[product] ?? 0) * times) / units) * units;
    }
    return lines;
  }

  #someLines(productsMax: number, unitsMax: number): Record<string, number> {
    const random = this.#random;
    const lines: Record<string, number> = {};
    const count = random.whole(1, Math.min(productsMax, this.#products.length));
    for (const product of random.shuffle(this.#products).slice(0, count)) {
      // Small numbers are commoner than large ones.
      lines[product] = Math.max(
        1,
        Math.ceil(unitsMax * random.fraction() * random.fraction() * 1.6),
      );
    }
    return lines;
  }

  #onShelf(lines: Lines): Record<string, number> {
    const there: Record<string, number> = {};
    for (const product in lines) {
      const shelf = this.#ledger.balances.stockOf('stockroom', product);
      const units = Math.min(lines[product] ?? 0, shelf);
      if (units > 0) there[product] = units;
    }
    return there;
  }

  #valueOf(lines: Lines): number {
    let value = 0;
    for (const product in lines) {
      value += (lines[product] ?? 0) * this.#ledger.priceOn(product, this.#day);
    }
    return value;
  }

  #paper(letter: string): string {
    const last = this.#papers.get(letter) ?? 0;
    // One paper in a hundred is spoiled, which nobody writes down.
    const isSpoiled = (last * 37 + letter.charCodeAt(0)) % 100 === 0;
    const next = last + (isSpoiled ? 2 : 1);
    this.#papers.set(letter, next);
    return `${letter}-${String(next).padStart(3, '0')}`;
  }

  #startDay(day: string): void {
    this.#day = day;
    this.#minute = 0;
  }

  #write<K extends Kind>(kind: K, saying: Saying<K>): RecordOf<K> {
    this.#minute += 1;
    const ms = Date.parse(`${this.#day}T09:00:00Z`) + this.#minute * 61_000;
    const record = this.#random.pick(this.#devices).write(kind, saying, ms);
    this.records.push(record);
    this.#ledger.add(record);
    return record;
  }
}
