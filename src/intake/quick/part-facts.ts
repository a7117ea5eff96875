import type { UuidData } from '../../base/uuid-table.ts';
import type { PriceFacts } from './price-rows.ts';
import type { LinesKept } from './set-up-lines.ts';

/**
 * What a part of a book has to say to the other parts before any of it can be added up: plain data
 * that can go from one thread to another. A place is that of a record in its part, in file order.
 */
export interface PartFacts {
  readonly size: number;
  readonly ids: UuidData;
  /** By place, the number of the record's kind in `allKinds`. */
  readonly kinds: Uint8Array<ArrayBuffer>;
  /** Rows (IdRows) of what replaces or voids another record. */
  readonly claims: Int32Array<ArrayBuffer>;
  /** When each of these was written, in step, as its instantNumber. */
  readonly claimsWritten: Float64Array<ArrayBuffer>;
  /** Rows (IdRows) of bounces and returned debits, with the payment or debit that they name. */
  readonly pointers: Int32Array<ArrayBuffer>;
  readonly prices: PriceFacts;
  /** The lines of set-up, where they were to be kept. */
  readonly setUp: LinesKept | undefined;
}

/** The memory behind the facts, which can be handed over in place of being copied. */
export function memoryOf(facts: PartFacts): ArrayBuffer[] {
  const { ids, kinds, claims, claimsWritten, pointers, prices, setUp } = facts;
  const numbers = [ids.words, ids.slots, kinds, claims, claimsWritten, pointers];
  const arrays = [...numbers, prices.rows];
  if (setUp !== undefined) arrays.push(setUp.bytes, setUp.ends);
  return arrays.map(({ buffer }) => buffer);
}
