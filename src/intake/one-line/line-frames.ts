import type { LineKind } from './line-kind.ts';
import type { amountWords, placeWords, textWords } from './line-words.ts';

export type AmountLabel = keyof typeof amountWords;
export type TextLabel = keyof typeof textWords;
export type LinePlace = keyof typeof placeWords;

/** What a line of a kind says, and so which words may stand in it. */
export interface Frame {
  readonly sellers?: 'one' | 'maybe' | 'two';
  /** `zeros`: 0 is written where there is none. `parts`: taken out, brought back, damaged. */
  readonly goods?: 'some' | 'maybe' | 'zeros' | 'parts';
  readonly amount?: 'one' | 'maybe';
  readonly other?: 'neighbour' | 'stall';
  readonly tender?: true;
  readonly places?: readonly LinePlace[];
  readonly texts?: readonly TextLabel[];
  readonly amounts?: readonly AmountLabel[];
  /** What follows a colon is the reason; else it is a note. */
  readonly reason?: true;
}

const SELLER_GOODS: Frame = { sellers: 'one', goods: 'some' };

export const frames: Readonly<Record<LineKind, Frame>> = {
  handover: { ...SELLER_GOODS, texts: ['slip'] },
  return: SELLER_GOODS,
  order: SELLER_GOODS,
  pass: { sellers: 'two', goods: 'some' },
  payment: { sellers: 'one', amount: 'one', tender: true, texts: ['receipt'] },
  refund: { sellers: 'one', amount: 'one', tender: true },
  count: { goods: 'zeros' },
  delivery: { goods: 'some', texts: ['slip'] },
  'supply-order': { goods: 'some', texts: ['slip'] },
  'swap-in': { goods: 'some', other: 'neighbour', texts: ['slip'] },
  'swap-out': { goods: 'some', other: 'neighbour', texts: ['slip'] },
  exchange: { goods: 'some' },
  gift: { sellers: 'maybe', goods: 'some', places: ['supplier', 'stockroom'] },
  loss: { sellers: 'maybe', goods: 'maybe', amount: 'maybe', reason: true },
  found: { goods: 'some', reason: true },
  deposit: { amount: 'one', texts: ['slip'] },
  'card-settle': { amount: 'one', amounts: ['fee'], places: ['bank', 'supplier'] },
  debit: { amount: 'one', amounts: ['announced'] },
  'bank-fee': { amount: 'one' },
  settle: { amount: 'one' },
  'stall-close': {
    goods: 'parts',
    other: 'stall',
    amounts: ['float', 'cash', 'cards', 'cheques', 'paidout'],
  },
};
