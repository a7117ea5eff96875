import type { Lines } from '../../records/fields.ts';
import type { RecordOf } from '../../records/record.ts';
import { unitsOf } from '../../records/units-of.ts';
import { type Adding, REASON } from './adding.ts';
import { errorModel } from './error-model.ts';
import { centsFrom, linesFrom, type Touched, UNSEEN } from './readings.ts';

/** A movement of goods or credit that should be in the book and is not. */
export function missingGoods(adding: Adding): void {
  ofFamilies(adding);
  asOrdered(adding);
  passes(adding);
  ofSupplier(adding);
  online(adding);
  paidGifts(adding);
  stalls(adding);
  shareouts(adding);
}

/** Goods out, goods back and gift units of each family, and gift units of nobody named. */
function ofFamilies(adding: Adding): void {
  const share = 1 / adding.situation.sellers.length;
  for (const seller of adding.sellers) {
    const out: Touched[] = [
      ['stock', `seller:${seller}`, 1],
      ['credit', `seller:${seller}`, 1],
      ['stock', 'stockroom', -1],
      ...(adding.situation.isSellerSeen(seller) ? [] : [FROM_STOCKROOM]),
    ];
    adding.goods('handover', out, share, (lines) => ({ seller, lines }));
    const held = heldBy(adding, seller);
    adding.goods('return', turned(out), share, (lines) => ({ seller, lines }), held);
    gifts(adding, seller, share);
  }
  gifts(adding, undefined, 1);
}

function gifts(adding: Adding, seller: string | undefined, share: number): void {
  const named = seller === undefined ? {} : { seller };
  const credited = seller === undefined ? 'pool:gift' : `seller:${seller}`;
  const credit: Touched = ['credit', credited, 1];
  const shelf: Touched[] = [credit, ['stock', 'gifted', 1], ['stock', 'stockroom', -1]];
  for (const from of ['supplier', 'stockroom'] as const) {
    const touched = from === 'supplier' ? [credit] : shelf;
    adding.goods('gift', touched, share / 4, (lines) => ({ ...named, lines, from }));
  }
}

/** Orders that nothing went out for as they say. */
function asOrdered(adding: Adding): void {
  const { entries } = adding.situation;
  const gone = new Set<string>();
  for (const record of entries) {
    if (record.kind === 'handover') gone.add(linesKey(record.seller, record.lines));
  }
  for (const record of entries) {
    if (record.kind !== 'order' || gone.has(linesKey(record.seller, record.lines))) continue;
    const { seller, lines, date } = record;
    if (!adding.sellers.includes(seller)) continue;
    for (const day of new Set([adding.day, date])) {
      adding.add('handover', { seller, lines, date: day }, errorModel.missing.rate / 2, record.id);
    }
  }
}

function passes(adding: Adding): void {
  const { situation, sellers } = adding;
  const share = 1 / situation.sellers.length ** 2;
  const off = sellers.filter((seller) => situation.isSellerOff(seller));
  for (const from of off.length === 0 ? [] : sellers) {
    for (const to of situation.isSellerOff(from) ? sellers : off) {
      if (from === to) continue;
      const touched: Touched[] = [
        ['stock', `seller:${from}`, -1],
        ['stock', `seller:${to}`, 1],
        ['credit', `seller:${from}`, -1],
        ['credit', `seller:${to}`, 1],
      ];
      const held = heldBy(adding, from);
      adding.goods('pass', touched, share, (lines) => ({ from, to, lines }), held);
    }
  }
}

/** How many products a family has: it brings back or passes on no others. */
function heldBy({ situation }: Adding, seller: string): number {
  const held = situation.ledger.balances.linesOf('stock', `seller:${seller}`);
  return Math.max(1, Object.values(held).filter((units) => units > 0).length);
}

function ofSupplier(adding: Adding): void {
  const into: Touched[] = [['stock', 'stockroom', 1], ['stock', 'supplier', -1], TO_STOCKROOM];
  adding.goods('delivery', into, 1, (lines) => ({ lines }));
  const neighbours = [...adding.situation.ledger.setup.neighbours.keys()];
  for (const neighbour of neighbours) {
    const swap: Touched[] = [
      ['stock', 'stockroom', 1],
      ['stock', `neighbour:${neighbour}`, -1],
      TO_STOCKROOM,
    ];
    const share = 1 / neighbours.length;
    adding.goods('swap-in', swap, share, (lines) => ({ neighbour, lines }));
    adding.goods('swap-out', turned(swap), share, (lines) => ({ neighbour, lines }));
  }
  // Lost and found goods are what is left when nothing explains a count: only where it shows.
  const lost: Touched[] = [['stock', 'lost', 1]];
  adding.goods('loss', lost, 1, (lines) => ({ lines, reason: REASON }));
  adding.goods('found', turned(lost), 1, (lines) => ({ lines, reason: REASON }));
}

function online(adding: Adding): void {
  const orphans = giftsWithoutOrder(adding);
  for (const seller of [undefined, ...adding.sellers]) {
    const named = seller === undefined ? {} : { seller };
    const share = (seller === undefined ? 0.4 : 0.6 / adding.situation.sellers.length) / 2;
    const credited = seller === undefined ? 'pool:post' : `seller:${seller}`;
    const owed = seller === undefined ? 'buyers' : `owed:${seller}`;
    const extra = Math.max(
      0,
      adding.situation.off('money', 'supplier'),
      -adding.situation.off('money', owed),
    );
    adding.goods('online', [['credit', credited, 1]], share, (lines) => {
      const paid = adding.valueOf(lines) + extra;
      return { ...named, order: UNKNOWN, lines, paid, sent: 'post' } as const;
    });
    const own = orphans.filter((gift) => gift.seller === seller);
    for (const gift of own) orderOf(adding, gift, credited);
    const touched = [[owed, -1] as const, ['supplier', 1] as const];
    for (const paid of centsFrom(adding.situation, touched)) {
      const says = { ...named, order: UNKNOWN, lines: {}, paid, sent: 'hand' } as const;
      adding.usual('online', says, share * adding.habits.chanceOf('online', 'paid', paid));
    }
  }
}

/** The posted order that a recorded gift belongs to, with whatever else was on it. */
function orderOf(adding: Adding, gift: RecordOf<'gift'>, credited: string): void {
  const named = gift.seller === undefined ? {} : { seller: gift.seller };
  const { order = UNKNOWN, date, lines: given } = gift;
  const read = linesFrom(adding.situation, [['credit', credited, 1]]);
  for (const lines of [{}, ...read]) {
    const paid = adding.valueOf(lines, date) + adding.valueOf(given, date);
    const says = { ...named, date, order, lines, gifts: given, paid, sent: 'post' } as const;
    adding.add('online', says, PAID_GIFT_CHANCE / (1 + read.length), gift.id);
  }
}

/** Gift units of an order that is itself not in the book. */
function giftsWithoutOrder(adding: Adding): RecordOf<'gift'>[] {
  const known = new Set<string>();
  for (const record of adding.situation.entries) {
    if (record.kind === 'online') known.add(record.order);
  }
  return adding.situation.entries.filter(
    (record): record is RecordOf<'gift'> =>
      record.kind === 'gift' && record.order !== undefined && !known.has(record.order),
  );
}

/** Gift units that a buyer paid for and nobody recorded as given. */
function paidGifts(adding: Adding): void {
  const given = new Set<string>();
  for (const record of adding.situation.entries) {
    if (record.kind === 'gift' && record.order !== undefined) given.add(record.order);
  }
  for (const record of adding.situation.entries) {
    if (record.kind !== 'online' || given.has(record.order)) continue;
    if (record.gifts === undefined || Object.keys(record.gifts).length === 0) continue;
    const { gifts: lines, order, date } = record;
    const named = record.seller === undefined ? {} : { seller: record.seller };
    for (const from of ['supplier', 'stockroom'] as const) {
      const says = { ...named, order, lines, from, date };
      adding.add('gift', says, PAID_GIFT_CHANCE / 2, record.id);
    }
  }
}

/** A stall that was planned and not settled: what it sold, and its takings. */
function stalls(adding: Adding): void {
  const settled = new Set<string>();
  for (const record of adding.situation.entries) {
    if (record.kind === 'stall-close') settled.add(record.stall);
  }
  for (const { stall, starts } of adding.situation.ledger.setup.stalls.values()) {
    const date = starts.slice(0, 10);
    if (settled.has(stall) || date > adding.day) continue;
    const touched: Touched[] = [
      ['credit', `pool:stall:${stall}`, 1],
      ['stock', 'stall-sold', 1],
      ['stock', 'stockroom', -1],
      FROM_STOCKROOM,
    ];
    for (const sold of linesFrom(adding.situation, touched)) stallClose(adding, stall, date, sold);
  }
}

function stallClose(adding: Adding, stall: string, date: string, sold: Lines): void {
  const { situation } = adding;
  const off = (account: string) => Math.max(0, situation.off('money', account));
  const damaged: Record<string, number> = {};
  const out: Record<string, number> = { ...sold };
  for (const product of situation.products) {
    const units = situation.off('stock', 'lost', product);
    if (units <= 0) continue;
    damaged[product] = units;
    out[product] = unitsOf(out, product) + units;
  }
  const cards = off('cards');
  const paidout = off('fees');
  const extras = {
    ...(Object.keys(damaged).length === 0 ? {} : { damaged }),
    ...(paidout === 0 ? {} : { paidout }),
  };
  const readings = cashReadings(adding, adding.valueOf(sold, date) - cards);
  const usual = STALL_CHANCE * adding.habits.chanceOfLines('stall-close', sold);
  for (const counted of readings) {
    // Less in the box than the book says can only be a float that stayed out, or another mistake.
    const [cash, float] = [Math.max(0, counted), Math.max(0, -counted)];
    const says = { stall, date, out, back: {}, float, cash, cards, cheques: 0 };
    adding.add('stall-close', { ...says, ...extras }, usual / readings.size, stall);
  }
}

/** What a stall may have brought in cash: by the box, by the box less other payments, by price. */
function cashReadings({ situation }: Adding, byPrice: number): Set<number> {
  if (!situation.isSeen('money', 'cashbox')) return new Set([Math.max(0, byPrice)]);
  const inBox = situation.off('money', 'cashbox');
  const paid = situation.sellers.reduce(
    (sum, seller) => sum + situation.off('money', `owed:${seller}`),
    0,
  );
  return new Set([inBox, inBox + paid, Math.max(0, byPrice)]);
}

/** A pool that was shared out on paper and not in the book. */
function shareouts(adding: Adding): void {
  const { situation } = adding;
  const lines: Record<string, Lines> = {};
  for (const seller of adding.sellers) {
    const read = linesFrom(situation, [['credit', `seller:${seller}`, 1]])[0];
    if (read !== undefined) lines[seller] = read;
  }
  if (Object.keys(lines).length === 0) return;
  const stallPools = [...situation.ledger.setup.stalls.keys()].map((stall) => `stall:${stall}`);
  for (const pool of ['post', 'gift', ...stallPools]) {
    const account = `pool:${pool}`;
    if (situation.isSeen('credit', account) && !situation.isOff('credit', account)) continue;
    adding.add('shareout', { pool, lines }, SHAREOUT_CHANCE);
  }
}

const TO_STOCKROOM: Touched = ['stock', UNSEEN, 1];
const FROM_STOCKROOM: Touched = ['stock', UNSEEN, -1];
const UNKNOWN = 'not known';
/** Chances, all assumed: gift units that were paid for were given and not recorded. */
const PAID_GIFT_CHANCE = 0.2;
/** A planned stall was held and not settled; a pool was shared out on paper only. */
const STALL_CHANCE = 0.3;
const SHAREOUT_CHANCE = 0.02;

function linesKey(seller: string, lines: Lines): string {
  return `${seller} ${Object.keys(lines)
    .sort()
    .map((product) => `${product}=${lines[product]}`)
    .join(' ')}`;
}

function turned(touched: readonly Touched[]): Touched[] {
  return touched.map(([ledger, account, sign]) => [ledger, account, sign === 1 ? -1 : 1]);
}
