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

/** Ids by what they name; plain data. */
export type ThingNames = Readonly<Record<NamedThing, Set<string>>>;

const things: readonly NamedThing[] = [
  'product',
  'seller',
  'family',
  'host',
  'neighbour',
  'stall',
  'level',
];

export function noThingNames(): ThingNames {
  return {
    product: new Set(),
    seller: new Set(),
    family: new Set(),
    host: new Set(),
    neighbour: new Set(),
    stall: new Set(),
    level: new Set(),
  };
}

/** Adds the thing that a record sets up, if it does, whether the record still counts or not. */
export function addSetUp(names: ThingNames, record: BookRecord): void {
  const set = setUpBy(record);
  if (set !== undefined) names[set.thing].add(set.id);
}

/** True where each name is in one of the lists of what was ever set up. */
export function areSetUp(names: ThingNames, setUp: readonly ThingNames[]): boolean {
  return things.every((thing) =>
    [...names[thing]].every((id) => setUp.some((list) => list[thing].has(id))),
  );
}
