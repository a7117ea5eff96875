import { addDays } from '../src/base/day.ts';
import { type Seeded, seeded } from '../src/base/seeded.ts';
import type { Lines } from '../src/records/fields.ts';
import type { BookRecord, Kind, MovementRecord, RecordOf } from '../src/records/record.ts';
import { Device, type Saying } from './device.ts';

/** How large a made season is. */
export interface SeasonShape {
  readonly families: number;
  readonly products: number;
  readonly days: number;
  /** How many things happen on a day, on average. */
  readonly actsADay: number;
  /** Of 100 acts, how many change or remove an earlier record. */
  readonly changesPercent: number;
}

const FIRST_DAY = '2027-02-01';
const DAY_MS = 86_400_000;
const SKEWS_MS = [0, -7 * 60_000, 3 * 3_600_000, -2 * DAY_MS];
const RECENT_MAX = 400;

/** What a season maker knows while it makes a season: what exists, and roughly what is where. */
export class SeasonWorld {
  readonly random: Seeded;
  readonly records: BookRecord[] = [];
  readonly days: readonly string[];
  readonly products: string[] = [];
  readonly priceByProduct = new Map<string, number>();
  readonly sellers: string[] = [];
  readonly hosts = ['market', 'bakery', 'garden'] as const;
  readonly neighbours = ['fernhill', 'millbrook'] as const;
  /** Stalls that were set up and not yet closed, and what each closed one has not shared out. */
  readonly stallsOpen: string[] = [];
  readonly pools = new Map<string, Record<string, number>>();
  readonly owedBySeller = new Map<string, number>();
  readonly shelf = new Map<string, number>();
  cashboxMinor = 0;
  cardsMinor = 0;
  day = FIRST_DAY;
  #latest = new Map<Kind, BookRecord[]>();
  #minute = 0;
  readonly #devices: Device[];

  constructor(seed: number, dayCount: number) {
    this.random = seeded(seed);
    this.days = Array.from({ length: dayCount }, (_, index) => addDays(FIRST_DAY, index));
    this.#devices = SKEWS_MS.map(
      (skew, index) => new Device(`device-${index + 1}`, skew, seeded(seed * 31 + index)),
    );
  }

  startDay(day: string): void {
    this.day = day;
    this.#minute = 0;
  }

  /** Writes on any device and keeps what was written. */
  write<K extends Kind>(kind: K, saying: Saying<K>): RecordOf<K> {
    return this.#keep(this.device().write(kind, saying, this.#now()));
  }

  /** Writes a record that takes the place of an earlier one. */
  edit<R extends BookRecord>(record: R, changes: Partial<R>): R {
    return this.#keep(this.device().edit(record, changes, this.#now()));
  }

  device(): Device {
    return this.random.pick(this.#devices);
  }

  /** Any recent record of a kind; undefined where there is none yet. */
  recent<K extends Kind>(kind: K): RecordOf<K> | undefined {
    const found = this.#latest.get(kind) ?? [];
    if (found.length === 0) return undefined;
    const record = this.random.pick(found);
    return isKindOf(record, kind) ? record : undefined;
  }

  /** Any recent movement, of any kind. */
  recentMovement(kinds: readonly MovementRecord['kind'][]): MovementRecord | undefined {
    return this.recent(this.random.pick(kinds));
  }

  has(kind: Kind): boolean {
    return this.#latest.has(kind);
  }

  /** A few products with small amounts, at most what `limit` says there is. */
  someLines(most: number, limit?: (product: string) => number): Record<string, number> {
    const lines: Record<string, number> = {};
    const count = this.random.whole(1, Math.min(4, this.products.length));
    for (const product of this.random.shuffle(this.products).slice(0, count)) {
      const units = Math.min(this.random.whole(1, most), limit?.(product) ?? most);
      if (units > 0) lines[product] = units;
    }
    return lines;
  }

  onShelf = (product: string): number => this.shelf.get(product) ?? 0;

  move(lines: Lines, sign: 1 | -1): void {
    for (const product in lines) {
      this.shelf.set(product, this.onShelf(product) + sign * (lines[product] ?? 0));
    }
  }

  owe(seller: string, minor: number): void {
    this.owedBySeller.set(seller, (this.owedBySeller.get(seller) ?? 0) + minor);
  }

  priceOf(lines: Lines): number {
    let minor = 0;
    for (const product in lines) {
      minor += (lines[product] ?? 0) * (this.priceByProduct.get(product) ?? 0);
    }
    return minor;
  }

  pool(name: string, lines: Lines): void {
    const pool = this.pools.get(name) ?? {};
    for (const product in lines) pool[product] = (pool[product] ?? 0) + (lines[product] ?? 0);
    this.pools.set(name, pool);
  }

  /** Most facts are written on their day, some a few days late and dated back. */
  dayOfFact(): string {
    if (!this.random.chance(6)) return this.day;
    const earlier = addDays(this.day, -this.random.whole(1, 5));
    return earlier < FIRST_DAY ? FIRST_DAY : earlier;
  }

  #now(): number {
    this.#minute += 1;
    return Date.parse(`${this.day}T08:00:00Z`) + this.#minute * 1_013;
  }

  #keep<R extends BookRecord>(record: R): R {
    this.records.push(record);
    const latest = this.#latest.get(record.kind) ?? [];
    this.#latest.set(record.kind, latest);
    if (latest.length < RECENT_MAX) latest.push(record);
    else latest[this.random.whole(0, RECENT_MAX - 1)] = record;
    return record;
  }
}

function isKindOf<K extends Kind>(record: BookRecord, kind: K): record is RecordOf<K> {
  return record.kind === kind;
}
