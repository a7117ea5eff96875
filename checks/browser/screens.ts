import { movementKinds, setupKinds } from '../../src/records/record.ts';
import { recordsOf } from './book-records.ts';
import type { OpenedApp } from './harness.ts';

/** The address of every screen of the app over the demo season, to look at all of them. */

/** The screens for a task, each with a page of its own. */
export const TASK_PATHS = [
  '/families',
  '/families/bergstrom',
  '/statements',
  '/stalls',
  '/stalls/market-0213',
  '/stalls/garden-0327',
  '/stalls/garden-0327/sell',
  '/stalls/garden-0327/sheet',
  '/stalls/garden-0327/sheet/ready',
  '/stalls/garden-0327/sheet/count',
  '/pools/post',
  '/pools/stall:garden-0327/lift',
  '/count',
  '/set-up',
  '/set-up/season',
  '/set-up/banking',
  '/set-up/paste',
  '/set-up/price-list',
  '/set-up/families',
  '/set-up/sellers',
  '/set-up/hosts',
  '/set-up/neighbours',
  '/set-up/stalls',
  '/set-up/sharing',
  '/set-up/prize-steps',
  '/set-up/proceeds',
  '/set-up/holds',
  '/products',
  '/prizes',
  '/prizes/order',
  '/prizes/hand-out',
  '/hosts/market',
  '/match/bank',
  '/match/supplier',
  '/match/debits',
  '/match/reconciliation',
  '/closing',
  '/closing/close',
  '/closing/first?step=2',
  '/words',
  '/why',
  '/why?about=stockroom',
  '/why?about=seller:reka',
  '/why?about=bank&bank=333',
  '/phone',
] as const;

/** The board, its places, the accounts behind its figures, and how records are found. */
export const BOARD_PATHS = [
  '/',
  '/places/stockroom',
  '/places/families',
  '/places/stalls',
  '/places/cashbox',
  '/places/bank',
  '/places/supplier',
  '/accounts/money/owed:reka',
  '/accounts/stock/seller:reka',
  '/accounts/credit/seller:reka',
  '/find',
  '/find?kind=payment',
  '/find?text=cheque',
  '/add',
] as const;

/** The form of each kind of record. */
export const FORM_PATHS = [...movementKinds, ...setupKinds].map((kind) => `/add/${kind}`);

/** Screens about one record: the last of some kinds, its edit form, and the last count's result. */
export async function recordPaths(app: OpenedApp): Promise<string[]> {
  const paths: string[] = [];
  for (const kind of ['handover', 'payment', 'stall-close', 'delivery', 'void'] as const) {
    const id = (await recordsOf(app, kind)).at(-1)?.id;
    if (id === undefined) continue;
    paths.push(`/records/${id}`);
    if (kind !== 'void') paths.push(`/records/${id}/edit`);
  }
  const count = (await recordsOf(app, 'count')).at(-1);
  return count === undefined ? paths : [...paths, `/count/${count.id}`];
}
