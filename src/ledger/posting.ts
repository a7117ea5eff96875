import type { Lines } from '../records/fields.ts';
import type { MovementKind, MovementRecord, RecordOf } from '../records/record.ts';
import { unitsOf } from '../records/units-of.ts';

/**
 * The posting rules: what each kind of movement moves, and between which accounts.
 * Every posting is a move of a whole number from one account to another, so in every record
 * each product, the money and each product's credit add up to zero by construction.
 * The contract is section 4 of the book specification, restated in ARCHITECTURE.md.
 */

/** Where postings go. Amounts may be negative; a move of zero may be left out. */
export interface Mover {
  stock(product: string, units: number, from: string, to: string): void;
  /** Minor units: `to` grows, `from` shrinks. */
  money(minor: number, from: string, to: string): void;
  credit(product: string, units: number, from: string, to: string): void;
}

/** What a posting rule may ask of the rest of the book. */
export interface PostingContext {
  /** Price in minor units of one unit on a day. */
  priceOn(product: string, day: string): number;
  /** Minor units of the payment that this id stands for, 0 when there is none. */
  paymentOf(id: string): { readonly seller: string; readonly cents: number } | undefined;
  /** Minor units of the debit that this id stands for. */
  debitOf(id: string): { readonly cents: number } | undefined;
}

/** The value of lines in minor units at the prices of a day. */
export function priceOfLines(
  lines: Lines,
  day: string,
  context: Pick<PostingContext, 'priceOn'>,
): number {
  let value = 0;
  for (const product in lines) value += (lines[product] ?? 0) * context.priceOn(product, day);
  return value;
}

/**
 * Units that a stall sold: taken out, less brought back, less damaged. Negative when miscounted.
 */
export function soldAtStall(record: RecordOf<'stall-close'>): Record<string, number> {
  const sold: Record<string, number> = {};
  for (const product in record.out) sold[product] = record.out[product] ?? 0;
  for (const product in record.back) {
    sold[product] = unitsOf(sold, product) - (record.back[product] ?? 0);
  }
  for (const product in record.damaged) {
    sold[product] = unitsOf(sold, product) - (record.damaged[product] ?? 0);
  }
  return sold;
}

/**
 * Minor units that a stall took: counted cash less the float, cheques, cards, and cash paid out.
 */
export function takingsAtStall(record: RecordOf<'stall-close'>): number {
  return record.cash - record.float + record.cheques + record.cards + (record.paidout ?? 0);
}

type Rule<K extends MovementKind> = (
  record: RecordOf<K>,
  context: PostingContext,
  mover: Mover,
) => void;

const moveNothing = (): void => {};

/** One rule a kind; the compiler asks for a row when a kind is added. */
const rules: { readonly [K in MovementKind]: Rule<K> } = {
  order: moveNothing,
  'supply-order': moveNothing,
  exchange: moveNothing,
  count: moveNothing,
  delivery: (record, context, mover) =>
    goods(record, 'supplier', 'stockroom', 'supplier', 'goods', context, mover),
  'swap-in': (record, context, mover) =>
    goods(record, neighbour(record.neighbour), 'stockroom', 'supplier', 'goods', context, mover),
  'swap-out': (record, context, mover) =>
    goods(record, 'stockroom', neighbour(record.neighbour), 'goods', 'supplier', context, mover),
  handover: (record, context, mover) => {
    const seller = sellerAccount(record.seller);
    goods(record, 'stockroom', seller, 'goods', owed(record.seller), context, mover);
    credit(record.lines, 'issued', seller, mover);
  },
  return: (record, context, mover) => {
    const seller = sellerAccount(record.seller);
    goods(record, seller, 'stockroom', owed(record.seller), 'goods', context, mover);
    credit(record.lines, seller, 'issued', mover);
  },
  pass: (record, context, mover) => {
    const from = sellerAccount(record.from);
    const to = sellerAccount(record.to);
    goods(record, from, to, owed(record.from), owed(record.to), context, mover);
    credit(record.lines, from, to, mover);
  },
  online: postOnline,
  gift: postGift,
  'stall-close': postStallClose,
  shareout: postShareout,
  payment: (record, _context, mover) =>
    mover.money(record.cents, owed(record.seller), tenderAccount(record.tender)),
  refund: (record, _context, mover) =>
    mover.money(record.cents, tenderAccount(record.tender), owed(record.seller)),
  deposit: (record, _context, mover) => mover.money(record.cents, 'cashbox', 'bank'),
  'card-settle': (record, _context, mover) => {
    mover.money(record.cents, 'cards', record.to);
    mover.money(record.fee ?? 0, 'cards', 'fees');
  },
  debit: (record, _context, mover) => mover.money(record.cents, 'bank', 'supplier'),
  'debit-returned': (record, context, mover) => {
    mover.money(context.debitOf(record.debit)?.cents ?? 0, 'supplier', 'bank');
    mover.money(record.fee ?? 0, 'bank', 'fees');
  },
  'bank-fee': (record, _context, mover) => mover.money(record.cents, 'bank', 'fees'),
  bounced: postBounced,
  loss: postLoss,
  found: (record, context, mover) =>
    goods(record, 'lost', 'stockroom', 'losses', 'goods', context, mover),
  settle: (record, _context, mover) => mover.money(record.proceeds, 'proceeds', 'supplier'),
};

/** Posts one movement that counts. Total: every record that fits its schema has postings. */
export function post(record: MovementRecord, context: PostingContext, mover: Mover): void {
  // The table pairs each kind with its own record type, which the compiler cannot follow here.
  const rule = rules[record.kind] as Rule<MovementKind>;
  rule(record, context, mover);
}

const neighbour = accountNamer('neighbour');
const sellerAccount = accountNamer('seller');
const owed = accountNamer('owed');
const poolAccount = accountNamer('pool');
const stallPool = accountNamer('pool:stall');

/**
 * Names accounts like `owed:ada`. Each name is made once: joining texts anew for every posting
 * took a third of the time of folding a large book.
 */
function accountNamer(family: string): (id: string) => string {
  const names = new Map<string, string>();
  return (id) => {
    const known = names.get(id);
    if (known !== undefined) return known;
    const name = `${family}:${id}`;
    names.set(id, name);
    return name;
  };
}

/**
 * Cash and cheques are in the cash box until they are banked; card takings are still on their way.
 */
function tenderAccount(tender: 'cash' | 'cheque' | 'card'): string {
  return tender === 'card' ? 'cards' : 'cashbox';
}

function credit(lines: Lines, from: string, to: string, mover: Mover): void {
  for (const product in lines) mover.credit(product, lines[product] ?? 0, from, to);
}

/** Goods from one place to another, with their price from one money account to another. */
function goods(
  record: { readonly lines: Lines; readonly date: string },
  from: string,
  to: string,
  moneyFrom: string,
  moneyTo: string,
  context: PostingContext,
  mover: Mover,
): void {
  for (const product in record.lines) mover.stock(product, record.lines[product] ?? 0, from, to);
  mover.money(priceOfLines(record.lines, record.date, context), moneyFrom, moneyTo);
}

/**
 * The supplier ships (`post`) or the seller brings it (`hand`): the buyer has paid the supplier.
 */
function postOnline(record: RecordOf<'online'>, context: PostingContext, mover: Mover): void {
  // An order without a seller waits on the clearing account `buyers`, whoever brings it.
  const payer = record.seller === undefined ? 'buyers' : owed(record.seller);
  mover.money(record.paid, payer, 'supplier');
  if (record.sent === 'hand') return;
  mover.money(priceOfLines(record.lines, record.date, context), 'supplier', payer);
  const credited = record.seller === undefined ? 'pool:post' : sellerAccount(record.seller);
  credit(record.lines, 'issued', credited, mover);
}

function postGift(record: RecordOf<'gift'>, context: PostingContext, mover: Mover): void {
  const payer = record.seller === undefined ? 'buyers' : owed(record.seller);
  const credited = record.seller === undefined ? 'pool:gift' : sellerAccount(record.seller);
  if (record.from === 'stockroom') {
    goods(record, 'stockroom', 'gifted', 'goods', payer, context, mover);
  } else {
    mover.money(priceOfLines(record.lines, record.date, context), 'supplier', payer);
  }
  credit(record.lines, 'issued', credited, mover);
}

function postStallClose(
  record: RecordOf<'stall-close'>,
  context: PostingContext,
  mover: Mover,
): void {
  const sold = soldAtStall(record);
  const soldValue = priceOfLines(sold, record.date, context);
  const pool = stallPool(record.stall);
  for (const product in sold) {
    mover.stock(product, sold[product] ?? 0, 'stockroom', 'stall-sold');
    mover.credit(product, sold[product] ?? 0, 'issued', pool);
  }
  for (const product in record.damaged) {
    mover.stock(product, record.damaged[product] ?? 0, 'stockroom', 'lost');
  }
  mover.money(priceOfLines(record.damaged ?? {}, record.date, context), 'goods', 'losses');
  mover.money(record.cash - record.float + record.cheques, 'goods', 'cashbox');
  mover.money(record.cards, 'goods', 'cards');
  mover.money(record.paidout ?? 0, 'goods', 'fees');
  // What should have come in and did not is short (positive); what came in on top is over.
  mover.money(soldValue - takingsAtStall(record), 'goods', 'overshort');
}

function postShareout(record: RecordOf<'shareout'>, _context: PostingContext, mover: Mover): void {
  const pool = poolAccount(record.pool);
  for (const seller in record.lines) {
    credit(record.lines[seller] ?? {}, pool, sellerAccount(seller), mover);
  }
}

function postBounced(record: RecordOf<'bounced'>, context: PostingContext, mover: Mover): void {
  const payment = context.paymentOf(record.payment);
  // A bounce whose payment has not arrived yet, or was removed, has nobody to go back to.
  if (payment !== undefined) mover.money(payment.cents, 'bank', owed(payment.seller));
  const payer = record.charge === true && payment !== undefined ? owed(payment.seller) : 'fees';
  mover.money(record.fee ?? 0, 'bank', payer);
}

function postLoss(record: RecordOf<'loss'>, context: PostingContext, mover: Mover): void {
  if (record.lines !== undefined) {
    goods(
      { lines: record.lines, date: record.date },
      'stockroom',
      'lost',
      'goods',
      'losses',
      context,
      mover,
    );
  }
  if (record.seller !== undefined) {
    mover.money(record.cents ?? 0, owed(record.seller), 'losses');
  }
}
