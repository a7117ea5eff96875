import { byText } from '../base/order.ts';
import type { BankFee } from './kinds/bank-fee.ts';
import type { Bounced } from './kinds/bounced.ts';
import type { CardSettle } from './kinds/card-settle.ts';
import type { Choice } from './kinds/choice.ts';
import type { Count } from './kinds/count.ts';
import type { Debit } from './kinds/debit.ts';
import type { DebitReturned } from './kinds/debit-returned.ts';
import type { Delivery } from './kinds/delivery.ts';
import type { Deposit } from './kinds/deposit.ts';
import type { Exchange } from './kinds/exchange.ts';
import type { Family } from './kinds/family.ts';
import type { Found } from './kinds/found.ts';
import type { Gift } from './kinds/gift.ts';
import type { Handover } from './kinds/handover.ts';
import type { Hold } from './kinds/hold.ts';
import type { Host } from './kinds/host.ts';
import type { Level } from './kinds/level.ts';
import type { Loss } from './kinds/loss.ts';
import type { Neighbour } from './kinds/neighbour.ts';
import type { Online } from './kinds/online.ts';
import type { Order } from './kinds/order.ts';
import type { Pass } from './kinds/pass.ts';
import type { Payment } from './kinds/payment.ts';
import type { Proceeds } from './kinds/proceeds.ts';
import type { Product } from './kinds/product.ts';
import type { Refund } from './kinds/refund.ts';
import type { Return } from './kinds/return.ts';
import type { Season } from './kinds/season.ts';
import type { Seller } from './kinds/seller.ts';
import type { Settle } from './kinds/settle.ts';
import type { Shareout } from './kinds/shareout.ts';
import type { Stall } from './kinds/stall.ts';
import type { StallClose } from './kinds/stall-close.ts';
import type { SupplyOrder } from './kinds/supply-order.ts';
import type { SwapIn } from './kinds/swap-in.ts';
import type { SwapOut } from './kinds/swap-out.ts';
import type { Void } from './kinds/void.ts';

/**
 * The book's records as types, with the names of their kinds. The schemas behind the types are in
 * schema.ts; they are kept apart so that the first screen does not carry the validator.
 */
interface SetupByKind {
  season: Season;
  product: Product;
  hold: Hold;
  family: Family;
  seller: Seller;
  host: Host;
  neighbour: Neighbour;
  stall: Stall;
  level: Level;
  choice: Choice;
  proceeds: Proceeds;
}

interface MovementByKind {
  order: Order;
  'supply-order': SupplyOrder;
  delivery: Delivery;
  'swap-in': SwapIn;
  'swap-out': SwapOut;
  exchange: Exchange;
  handover: Handover;
  return: Return;
  pass: Pass;
  online: Online;
  gift: Gift;
  'stall-close': StallClose;
  shareout: Shareout;
  payment: Payment;
  refund: Refund;
  deposit: Deposit;
  'card-settle': CardSettle;
  debit: Debit;
  'debit-returned': DebitReturned;
  'bank-fee': BankFee;
  bounced: Bounced;
  loss: Loss;
  found: Found;
  count: Count;
  settle: Settle;
}

interface RecordByKind extends SetupByKind, MovementByKind {
  void: Void;
}

export type SetupKind = keyof SetupByKind;
export type MovementKind = keyof MovementByKind;
export type Kind = keyof RecordByKind;
export type RecordOf<K extends Kind> = RecordByKind[K];
/** One fact of the book, as it stands in a file, the store and a request. */
export type BookRecord = RecordByKind[Kind];
export type SetupRecord = SetupByKind[SetupKind];
export type MovementRecord = MovementByKind[MovementKind];

export const setupKinds = [
  'season',
  'product',
  'hold',
  'family',
  'seller',
  'host',
  'neighbour',
  'stall',
  'level',
  'choice',
  'proceeds',
] as const satisfies readonly SetupKind[];

export const movementKinds = [
  'order',
  'supply-order',
  'delivery',
  'swap-in',
  'swap-out',
  'exchange',
  'handover',
  'return',
  'pass',
  'online',
  'gift',
  'stall-close',
  'shareout',
  'payment',
  'refund',
  'deposit',
  'card-settle',
  'debit',
  'debit-returned',
  'bank-fee',
  'bounced',
  'loss',
  'found',
  'count',
  'settle',
] as const satisfies readonly MovementKind[];

/** Every kind; a number stands for one by its place here, while the program runs. */
export const allKinds: readonly Kind[] = [...setupKinds, ...movementKinds, 'void'];

const SETUP: ReadonlySet<string> = new Set(setupKinds);
const MOVEMENT: ReadonlySet<string> = new Set(movementKinds);

export function isKind(text: string): text is Kind {
  return text === 'void' || SETUP.has(text) || MOVEMENT.has(text);
}

export function isMovementKind(kind: Kind): kind is MovementKind {
  return MOVEMENT.has(kind);
}

export function isSetupKind(kind: Kind): boolean {
  return SETUP.has(kind);
}

export function isMovement(record: BookRecord): record is MovementRecord {
  return MOVEMENT.has(record.kind);
}

export function isSetup(record: BookRecord): record is SetupRecord {
  return SETUP.has(record.kind);
}

/** As much of a record as decides which records count. */
export interface Claimant {
  readonly id: string;
  readonly at: string;
  readonly kind: Kind;
  readonly replaces?: string;
  readonly voids?: string;
}

/** The id that a record claims to stand for or to remove. */
export function claimedBy(record: Claimant): string | undefined {
  return record.kind === 'void' ? record.voids : record.replaces;
}

/** The order in which records of one thing follow each other: written time, then id. */
export function byWritten(a: Claimant, b: Claimant): number {
  return byText(a.at, b.at) || byText(a.id, b.id);
}

/** The order of a running list: the day it happened, then when it was written. */
export function byHappened(a: MovementRecord, b: MovementRecord): number {
  return byText(a.date, b.date) || byWritten(a, b);
}
