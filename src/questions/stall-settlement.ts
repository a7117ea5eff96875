import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { soldAtStall, takingsAtStall } from '../ledger/posting.ts';
import type { RecordOf } from '../records/record.ts';
import { unitsOf } from '../records/units-of.ts';
import { tallied } from './denominations.ts';

/**
 * What a settle sheet says so far; the same fields as the record it becomes. Minor units, units.
 */
export type StallDraft = Pick<
  RecordOf<'stall-close'>,
  'stall' | 'date' | 'out' | 'back' | 'damaged' | 'float' | 'cards' | 'cheques' | 'paidout'
> & {
  /** Pieces by denomination, from which the cash follows. */
  readonly tally?: Readonly<Record<string, number>>;
  /** Counted cash, float included; used only where there is no tally. */
  readonly cash?: number;
};

export interface SettledProduct {
  readonly product: string;
  readonly out: number;
  readonly back: number;
  readonly damaged: number;
  /** Out less back less damaged; negative when more came back than went out. */
  readonly sold: number;
  /** Minor units a unit on the stall's day. */
  readonly price: number;
  readonly value: number;
}

export interface StallSettlement {
  readonly products: readonly SettledProduct[];
  readonly sold: number;
  /** Minor units that the sold units should have brought. */
  readonly should: number;
  /** Minor units in the box by the tally, float included. */
  readonly cash: number;
  /** Minor units that came in: cash less float, cheques, cards, and what was paid out. */
  readonly have: number;
  /** Have less should: negative is short, positive is over, 0 agrees. */
  readonly difference: number;
  /** Products of which more came back or broke than went out: count again. */
  readonly moreBackThanOut: readonly string[];
}

/** A settle sheet worked out; it may not agree and is saved all the same. */
export function stallSettlement(ledger: Ledger, draft: StallDraft): StallSettlement {
  const cash = draft.tally === undefined ? (draft.cash ?? 0) : tallied(draft.tally);
  const sold = soldAtStall({ ...recordFields, ...draft, cash });
  const products = Object.keys(sold)
    .sort(byText)
    .map((product) => {
      const price = ledger.priceOn(product, draft.date);
      const units = unitsOf(sold, product);
      return {
        product,
        out: unitsOf(draft.out, product),
        back: unitsOf(draft.back, product),
        damaged: unitsOf(draft.damaged, product),
        sold: units,
        price,
        value: units * price,
      };
    });
  const should = products.reduce((sum, product) => sum + product.value, 0);
  const have = takingsAtStall({ ...recordFields, ...draft, cash });
  return {
    products,
    sold: products.reduce((sum, product) => sum + product.sold, 0),
    should,
    cash,
    have,
    difference: have - should,
    moreBackThanOut: products.filter(({ sold: units }) => units < 0).map(({ product }) => product),
  };
}

/** A draft is not written yet: what only a record has, which no sum here reads. */
const recordFields = { id: '', at: '', by: '', kind: 'stall-close' } as const;

/** Where a stall is on its way from planned to shared out. */
export type StallState = 'planned' | 'not-settled' | 'settled' | 'not-shared' | 'shared';

export interface StallStanding {
  readonly stall: RecordOf<'stall'>;
  readonly state: StallState;
  /** Its settle records that count; more than one is a double. */
  readonly closes: readonly RecordOf<'stall-close'>[];
  readonly shareouts: readonly RecordOf<'shareout'>[];
  /** Credited units in its pool by product: sold and not yet shared. */
  readonly notShared: Readonly<Record<string, number>>;
  readonly notSharedUnits: number;
}

/** Every stall in the order of its start. @param today `YYYY-MM-DD` */
export function stallStandings(ledger: Ledger, today: string): StallStanding[] {
  const stalls = [...ledger.setup.stalls.values()];
  stalls.sort((a, b) => byText(a.starts, b.starts) || byText(a.stall, b.stall));
  const movements = ledger.movements();
  return stalls.map((stall) => {
    const closes = movements
      .filter((movement) => movement.kind === 'stall-close')
      .filter((close) => close.stall === stall.stall);
    const shareouts = movements
      .filter((movement) => movement.kind === 'shareout')
      .filter((shareout) => shareout.pool === `stall:${stall.stall}`);
    const notShared = ledger.balances.linesOf('credit', `pool:stall:${stall.stall}`);
    const notSharedUnits = Object.values(notShared).reduce((sum, units) => sum + units, 0);
    const open = Object.keys(notShared).length > 0;
    const state = stateOf(stall, closes.length > 0, open, shareouts.length > 0, today);
    return { stall, state, closes, shareouts, notShared, notSharedUnits };
  });
}

function stateOf(
  stall: RecordOf<'stall'>,
  settled: boolean,
  open: boolean,
  shared: boolean,
  today: string,
): StallState {
  if (open) return 'not-shared';
  if (settled) return shared ? 'shared' : 'settled';
  return stall.starts.slice(0, 10) > today ? 'planned' : 'not-settled';
}
