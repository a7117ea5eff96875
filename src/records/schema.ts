import type { TObject } from 'typebox';
import { BankFee } from './kinds/bank-fee.ts';
import { Bounced } from './kinds/bounced.ts';
import { CardSettle } from './kinds/card-settle.ts';
import { Choice } from './kinds/choice.ts';
import { Count } from './kinds/count.ts';
import { Debit } from './kinds/debit.ts';
import { DebitReturned } from './kinds/debit-returned.ts';
import { Delivery } from './kinds/delivery.ts';
import { Deposit } from './kinds/deposit.ts';
import { Exchange } from './kinds/exchange.ts';
import { Family } from './kinds/family.ts';
import { Found } from './kinds/found.ts';
import { Gift } from './kinds/gift.ts';
import { Handover } from './kinds/handover.ts';
import { Hold } from './kinds/hold.ts';
import { Host } from './kinds/host.ts';
import { Level } from './kinds/level.ts';
import { Loss } from './kinds/loss.ts';
import { Neighbour } from './kinds/neighbour.ts';
import { Online } from './kinds/online.ts';
import { Order } from './kinds/order.ts';
import { Pass } from './kinds/pass.ts';
import { Payment } from './kinds/payment.ts';
import { Proceeds } from './kinds/proceeds.ts';
import { Product } from './kinds/product.ts';
import { Refund } from './kinds/refund.ts';
import { Return } from './kinds/return.ts';
import { Season } from './kinds/season.ts';
import { Seller } from './kinds/seller.ts';
import { Settle } from './kinds/settle.ts';
import { Shareout } from './kinds/shareout.ts';
import { Stall } from './kinds/stall.ts';
import { StallClose } from './kinds/stall-close.ts';
import { SupplyOrder } from './kinds/supply-order.ts';
import { SwapIn } from './kinds/swap-in.ts';
import { SwapOut } from './kinds/swap-out.ts';
import { Void } from './kinds/void.ts';
import type { Kind, MovementKind, SetupKind } from './record.ts';

/**
 * Every kind of record, one schema each: the single source of its TypeScript type, of the checks on
 * files, lines and requests, and of the HTTP description. A new kind is one file in kinds/, one
 * line here and one in record.ts; the compiler then names every table that needs a row.
 */

/** Set-up kinds have no date: per id the latest counts. */
export const setupSchemas = {
  season: Season,
  product: Product,
  hold: Hold,
  family: Family,
  seller: Seller,
  host: Host,
  neighbour: Neighbour,
  stall: Stall,
  level: Level,
  choice: Choice,
  proceeds: Proceeds,
} as const satisfies Record<SetupKind, TObject>;

/** Movement kinds happened on a day. */
export const movementSchemas = {
  order: Order,
  'supply-order': SupplyOrder,
  delivery: Delivery,
  'swap-in': SwapIn,
  'swap-out': SwapOut,
  exchange: Exchange,
  handover: Handover,
  return: Return,
  pass: Pass,
  online: Online,
  gift: Gift,
  'stall-close': StallClose,
  shareout: Shareout,
  payment: Payment,
  refund: Refund,
  deposit: Deposit,
  'card-settle': CardSettle,
  debit: Debit,
  'debit-returned': DebitReturned,
  'bank-fee': BankFee,
  bounced: Bounced,
  loss: Loss,
  found: Found,
  count: Count,
  settle: Settle,
} as const satisfies Record<MovementKind, TObject>;

export const recordSchemas = {
  ...setupSchemas,
  ...movementSchemas,
  void: Void,
} as const satisfies Record<Kind, TObject>;
