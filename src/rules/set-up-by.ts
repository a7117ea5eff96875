import type { BookRecord } from '../records/record.ts';
import type { NamedThing } from './references.ts';

/** The thing that a record sets up, so that others may name it. */
function setUpBy(
  record: BookRecord,
): { readonly thing: NamedThing; readonly id: string } | undefined {
  switch (record.kind) {
    case 'product':
      return { thing: 'product', id: record.product };
    case 'seller':
      return { thing: 'seller', id: record.seller };
    case 'family':
      return { thing: 'family', id: record.family };
    case 'host':
      return { thing: 'host', id: record.host };
    case 'neighbour':
      return { thing: 'neighbour', id: record.neighbour };
    case 'stall':
      return { thing: 'stall', id: record.stall };
    case 'level':
      return { thing: 'level', id: record.level };
    default:
      return undefined;
  }
}

/** Everything that any of the records has ever set up, whether it still counts or not. */
export class EverSetUp {
  readonly #known: Readonly<Record<NamedThing, Set<string>>> = {
    product: new Set(),
    seller: new Set(),
    family: new Set(),
    host: new Set(),
    neighbour: new Set(),
    stall: new Set(),
    level: new Set(),
  };

  add(record: BookRecord): void {
    const set = setUpBy(record);
    if (set !== undefined) this.#known[set.thing].add(set.id);
  }

  has(thing: NamedThing, id: string): boolean {
    return this.#known[thing].has(id);
  }
}
