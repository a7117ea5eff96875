import type { Ledger } from '../ledger/ledger.ts';
import { stepOn } from '../ledger/prices.ts';

/** A name of the book that a line of text may use. */
export interface LineName {
  readonly id: string;
  readonly name: string;
  /** The family's id and adult, who stand for a seller. */
  readonly also?: string;
  /** The day of a stall. */
  readonly day?: string;
}

export interface LineNames {
  readonly names: Readonly<
    Record<'seller' | 'product' | 'neighbour' | 'stall', readonly LineName[]>
  >;
  /** Units a case of a product holds on a day; 1 for a product without a case. */
  caseUnits(product: string, day: string): number;
  /** Minor units that a seller has still to pay; below zero in credit. */
  owed(seller: string): number;
}

/** What a book has to say to the reader of one line: its names, case sizes and what is owed. */
export function lineNames(ledger: Ledger): LineNames {
  const { sellers, families, products, neighbours, stalls, hosts } = ledger.setup;
  return {
    names: {
      seller: [...sellers.values()].map(({ seller, name, family }) => ({
        id: seller,
        name,
        also: `${family} ${families.get(family)?.name ?? ''}`,
      })),
      product: [...products.values()].map(({ product, name }) => ({ id: product, name })),
      neighbour: [...neighbours.values()].map(({ neighbour, name }) => ({ id: neighbour, name })),
      stall: [...stalls.values()].map(({ stall, host, starts }) => ({
        id: stall,
        name: hosts.get(host)?.name ?? host,
        day: starts.slice(0, 10),
      })),
    },
    caseUnits: (product, day) => stepOn(ledger.prices.get(product) ?? [], day)?.caseUnits ?? 1,
    owed: (seller) => ledger.balances.moneyOf(`owed:${seller}`),
  };
}
