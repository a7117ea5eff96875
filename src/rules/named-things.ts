import type { Setup } from '../ledger/setup.ts';
import type { BookRecord } from '../records/record.ts';
import type { NamedThing } from './references.ts';

/** The word a person reads for each thing. */
export const WORDS: Readonly<Record<NamedThing, string>> = {
  product: 'product',
  seller: 'seller',
  family: 'family',
  host: 'host shop',
  neighbour: 'neighbour group',
  stall: 'stall',
  level: 'prize step',
};

/** Where each thing is set up, by its id. */
export function tables(
  setup: Setup,
): Readonly<Record<NamedThing, ReadonlyMap<string, BookRecord>>> {
  return {
    product: setup.products,
    seller: setup.sellers,
    family: setup.families,
    host: setup.hosts,
    neighbour: setup.neighbours,
    stall: setup.stalls,
    level: setup.levels,
  };
}
