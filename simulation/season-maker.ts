import type { BookRecord, Kind } from '../src/records/record.ts';
import { changeSomething } from './change-acts.ts';
import * as goods from './goods-acts.ts';
import * as money from './money-acts.ts';
import { type SeasonShape, SeasonWorld } from './season-world.ts';
import * as setup from './setup-acts.ts';

/**
 * Makes whole seasons from a seed: the same seed and shape always give the same book. A season has
 * every kind of record, and what people do to records: edits, removals, conflicts, wrong clocks,
 * facts written days late.
 */

export const smallSeason: SeasonShape = {
  families: 6,
  products: 5,
  days: 63,
  actsADay: 4,
  changesPercent: 12,
};

type Act = (world: SeasonWorld) => void;

/** How often each act happens, out of the sum of all weights, and the kind it mostly writes. */
const ACTS: readonly (readonly [weight: number, kind: Kind, act: Act])[] = [
  [6, 'order', goods.handInOrder],
  [2, 'supply-order', goods.orderSupply],
  [5, 'delivery', goods.takeDelivery],
  [3, 'swap-in', goods.swapIn],
  [3, 'swap-out', goods.swapOut],
  [1, 'exchange', goods.exchange],
  [22, 'handover', goods.handOut],
  [6, 'return', goods.takeBack],
  [4, 'pass', goods.passOn],
  [9, 'online', goods.orderOnline],
  [4, 'gift', goods.giveGift],
  [4, 'stall', setup.planStall],
  [5, 'stall-close', goods.closeStall],
  [6, 'shareout', goods.shareOut],
  [20, 'payment', money.pay],
  [2, 'refund', money.refund],
  [5, 'deposit', money.deposit],
  [3, 'card-settle', money.settleCards],
  [2, 'debit', money.takeDebit],
  [1, 'debit-returned', money.returnDebit],
  [1, 'bank-fee', money.chargeBankFee],
  [2, 'bounced', money.bounce],
  [1, 'loss', goods.loseStock],
  [1, 'loss', money.giveUpDebt],
  [1, 'found', goods.findStock],
  [2, 'count', goods.countShelf],
  [1, 'settle', money.settleProceeds],
  [2, 'product', setup.changePrice],
  [2, 'seller', setup.rewriteSetup],
  [2, 'choice', setup.choosePrize],
  [1, 'hold', setup.holdProduct],
];
const WEIGHED: readonly Act[] = ACTS.flatMap(([weight, , act]) => Array<Act>(weight).fill(act));

/** The records of a made season, in the order in which they were written. */
export function makeSeason(seed: number, shape: SeasonShape = smallSeason): BookRecord[] {
  const world = new SeasonWorld(seed, shape.days);
  setup.setUp(world, shape);
  goods.takeDelivery(world);
  for (const day of world.days) {
    if (day !== world.days[0]) world.startDay(day);
    const acts = world.random.whole(0, shape.actsADay * 2);
    for (let done = 0; done < acts; done += 1) {
      if (world.random.chance(shape.changesPercent)) changeSomething(world);
      else world.random.pick(WEIGHED)(world);
    }
  }
  doWhatIsLeft(world);
  return world.records;
}

/** So that every season has every kind, what has not happened yet happens on the last day. */
function doWhatIsLeft(world: SeasonWorld): void {
  for (const [, kind, act] of ACTS) {
    if (kind === 'stall-close' && !world.has(kind) && world.stallsOpen.length === 0) {
      setup.planStall(world);
    }
    if (kind === 'shareout' && !world.has(kind))
      world.pool('post', { [world.products[0] ?? '']: 2 });
    if (!world.has(kind)) act(world);
  }
  while (!world.has('void')) changeSomething(world);
}
