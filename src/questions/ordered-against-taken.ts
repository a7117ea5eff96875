import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { Lines } from '../records/fields.ts';
import type { MovementRecord } from '../records/record.ts';

/** One product of one seller or family: what was ordered against what was taken over, in units. */
export interface OrderedLine {
  readonly product: string;
  /** On order forms. */
  readonly ordered: number;
  /** Paid online for the seller to bring. */
  readonly online: number;
  /**
   * Goods out, less goods back, with what was passed on taken off and what was passed here added.
   */
  readonly taken: number;
  /** Ordered and online units that are not taken over yet; 0 where more was taken than ordered. */
  readonly toHandOver: number;
  /** Taken over on top of every order: goods to sell. */
  readonly beyondOrders: number;
  /** Bought to be given away, on forms and online, whoever gives them on. */
  readonly giftsOrdered: number;
  readonly giftsRecorded: number;
  readonly records: readonly string[];
}

export interface OrderedAgainstTaken {
  /** In the order of product ids; products that were neither ordered nor taken are left out. */
  readonly lines: readonly OrderedLine[];
  /** Minor units that the forms say were handed in with them. */
  readonly paidWithForms: number;
  readonly toHandOver: number;
  readonly giftsToRecord: number;
  readonly records: readonly string[];
}

/** What the given sellers together ordered and took over. Pass one seller, or all of a family. */
export function orderedAgainstTaken(
  ledger: Ledger,
  sellers: readonly string[],
): OrderedAgainstTaken {
  const lines = new Map<string, Tally>();
  const records: string[] = [];
  let paidWithForms = 0;
  for (const movement of ledger.movements()) {
    const parts = partsOf(movement, new Set(sellers));
    if (parts.length === 0) continue;
    records.push(movement.id);
    if (movement.kind === 'order') paidWithForms += movement.paid ?? 0;
    for (const part of parts) addPart(lines, part, movement.id);
  }
  const answered = [...lines].sort((a, b) => byText(a[0], b[0])).map(([id, own]) => line(id, own));
  return {
    lines: answered,
    paidWithForms,
    toHandOver: answered.reduce((sum, one) => sum + one.toHandOver, 0),
    giftsToRecord: answered.reduce(
      (sum, one) => sum + Math.max(0, one.giftsOrdered - one.giftsRecorded),
      0,
    ),
    records,
  };
}

/** The ids of a family's sellers, in the written order of ids. */
export function sellersOf(ledger: Ledger, family: string): string[] {
  const sellers = [...ledger.setup.sellers.values()].filter((seller) => seller.family === family);
  return sellers.map((seller) => seller.seller);
}

type Column = 'ordered' | 'online' | 'taken' | 'giftsOrdered' | 'giftsRecorded';
type Tally = Record<Column, number> & { records: Set<string> };

interface Part {
  readonly column: Column;
  readonly sign: 1 | -1;
  readonly lines: Lines;
}

function partsOf(movement: MovementRecord, sellers: ReadonlySet<string>): Part[] {
  if (movement.kind === 'pass') {
    const parts: Part[] = [];
    if (sellers.has(movement.from)) parts.push(part('taken', movement.lines, -1));
    if (sellers.has(movement.to)) parts.push(part('taken', movement.lines));
    return parts;
  }
  if (!('seller' in movement) || movement.seller === undefined) return [];
  if (!sellers.has(movement.seller)) return [];
  switch (movement.kind) {
    case 'order':
      return [part('ordered', movement.lines), part('giftsOrdered', movement.gifts ?? {})];
    case 'online': {
      const gifts = part('giftsOrdered', movement.gifts ?? {});
      return movement.sent === 'hand' ? [part('online', movement.lines), gifts] : [gifts];
    }
    case 'handover':
      return [part('taken', movement.lines)];
    case 'return':
      return [part('taken', movement.lines, -1)];
    case 'gift':
      return [part('giftsRecorded', movement.lines)];
    default:
      return [];
  }
}

function part(column: Column, lines: Lines, sign: 1 | -1 = 1): Part {
  return { column, lines, sign };
}

function addPart(tallies: Map<string, Tally>, { column, lines, sign }: Part, record: string): void {
  for (const product in lines) {
    const tally = tallies.get(product) ?? {
      ordered: 0,
      online: 0,
      taken: 0,
      giftsOrdered: 0,
      giftsRecorded: 0,
      records: new Set<string>(),
    };
    tally[column] += sign * (lines[product] ?? 0);
    tally.records.add(record);
    tallies.set(product, tally);
  }
}

function line(product: string, { records, ...units }: Tally): OrderedLine {
  const wanted = units.ordered + units.online;
  return {
    product,
    ...units,
    toHandOver: Math.max(0, wanted - units.taken),
    beyondOrders: Math.max(0, units.taken - wanted),
    records: [...records],
  };
}
