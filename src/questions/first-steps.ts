import type { Ledger } from '../ledger/ledger.ts';

/** What a new book needs before goods can go out, in the order in which it is done best. */
export const firstSteps = ['season', 'products', 'sellers', 'delivery', 'goods-out'] as const;
export type FirstStep = (typeof firstSteps)[number];

export interface FirstSteps {
  readonly steps: readonly { readonly step: FirstStep; readonly done: boolean }[];
  /** The step to take now; undefined once goods have gone out, when this is over. */
  readonly next: FirstStep | undefined;
}

/** How far a new book has come. */
export function howFar(ledger: Ledger): FirstSteps {
  const { season, products, sellers } = ledger.setup;
  const kinds = new Set(ledger.movements().map(({ kind }) => kind));
  const done: Readonly<Record<FirstStep, boolean>> = {
    season: season !== undefined,
    products: products.size > 0,
    sellers: sellers.size > 0,
    delivery: kinds.has('delivery') || kinds.has('swap-in'),
    'goods-out': kinds.has('handover') || kinds.has('stall-close'),
  };
  const over = done['goods-out'];
  return {
    steps: firstSteps.map((step) => ({ step, done: done[step] })),
    next: over ? undefined : firstSteps.find((step) => !done[step]),
  };
}
