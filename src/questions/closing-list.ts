import type { Ledger } from '../ledger/ledger.ts';
import type { ClosingItem, ClosingPart } from './closing/closing-item.ts';
import { familyAccounts } from './closing/families.ts';
import { goodsOnHold, stockroomCounted, stockroomEmpty } from './closing/goods.ts';
import {
  buyersCleared,
  cardsArrived,
  cashBanked,
  debitsCovered,
  supplierPaid,
} from './closing/money.ts';
import { conflictsSettled, deadlines, prizeChoices } from './closing/papers-and-dates.ts';
import { poolsShared, stallsSettled } from './closing/stalls.ts';
import { recordsByAccount } from './records-by-account.ts';

/** What is left to do before the season closes. */
export interface ClosingList {
  /** True when no item is open. */
  readonly ready: boolean;
  readonly items: readonly ClosingItem[];
}

/** The parts of the list, in the order in which people work through them. */
const parts: readonly ClosingPart[] = Object.freeze([
  stockroomCounted,
  stockroomEmpty,
  goodsOnHold,
  familyAccounts,
  stallsSettled,
  poolsShared,
  cashBanked,
  cardsArrived,
  buyersCleared,
  supplierPaid,
  debitsCovered,
  prizeChoices,
  conflictsSettled,
  deadlines,
]);

/** @param today the day on which the list is read (`YYYY-MM-DD`): deadlines are ahead or passed */
export function closingList(ledger: Ledger, today: string): ClosingList {
  const items = [...closingParts(ledger, today)].flat();
  return { ready: items.every((item) => item.state !== 'open'), items };
}

/** The items part by part, each worked out when it is asked for: a screen may rest in between. */
export function* closingParts(ledger: Ledger, today: string): Generator<readonly ClosingItem[]> {
  const movements = ledger.movements();
  const context = { ledger, movements, recordsOf: recordsByAccount(ledger, movements), today };
  yield [];
  for (const part of parts) yield part(context);
}
