import type { BookRecord } from '../records/record.ts';

/** What a record names of the set-up: the things that must be there before it makes sense. */
export type NamedThing = 'product' | 'seller' | 'family' | 'host' | 'neighbour' | 'stall' | 'level';

/**
 * Told of each thing a record names.
 * @param field the path of the field; where `isKey`, the name itself is the last part of the path
 */
export type OnNamed = (thing: NamedThing, id: string, field: string, isKey: boolean) => void;

/** Goes through what a record names, one arm a kind. */
export function eachNamed(record: BookRecord, on: OnNamed): void {
  switch (record.kind) {
    case 'hold':
      on('product', record.product, 'product', false);
      return;
    case 'seller':
      on('family', record.family, 'family', false);
      return;
    case 'stall':
      on('host', record.host, 'host', false);
      for (let index = 0; index < record.shifts.length; index += 1) {
        const shift = record.shifts[index];
        if (shift !== undefined) on('seller', shift.seller, `shifts.${index}.seller`, false);
      }
      return;
    case 'choice':
      on('seller', record.seller, 'seller', false);
      on('level', record.level, 'level', false);
      return;
    case 'swap-in':
    case 'swap-out':
      on('neighbour', record.neighbour, 'neighbour', false);
      products(record.lines, 'lines', on);
      return;
    case 'pass':
      on('seller', record.from, 'from', false);
      on('seller', record.to, 'to', false);
      products(record.lines, 'lines', on);
      return;
    case 'payment':
    case 'refund':
      on('seller', record.seller, 'seller', false);
      return;
    case 'count':
      if (record.sheet !== undefined) on('stall', record.sheet.stall, 'sheet.stall', false);
      products(record.lines, 'lines', on);
      return;
    case 'stall-close':
      on('stall', record.stall, 'stall', false);
      products(record.out, 'out', on);
      products(record.back, 'back', on);
      products(record.damaged, 'damaged', on);
      return;
    case 'shareout':
      if (record.pool.startsWith(STALL)) {
        on('stall', record.pool.slice(STALL.length), 'pool', false);
      }
      for (const seller in record.lines) {
        on('seller', seller, 'lines', true);
        products(record.lines[seller], `lines.${seller}`, on);
      }
      return;
    case 'delivery':
      products(record.lines, 'lines', on);
      products(record.short, 'short', on);
      for (const [index, lot] of (record.lots ?? []).entries()) {
        on('product', lot.product, `lots.${index}.product`, false);
      }
      return;
    default:
      // The kinds that say no more than who and what, as far as they say it.
      if ('seller' in record && record.seller !== undefined) {
        on('seller', record.seller, 'seller', false);
      }
      if ('lines' in record) products(record.lines, 'lines', on);
      if ('gifts' in record) products(record.gifts, 'gifts', on);
  }
}

function products(
  lines: Readonly<Record<string, number>> | undefined,
  field: string,
  on: OnNamed,
): void {
  for (const product in lines) on('product', product, field, true);
}

const STALL = 'stall:';
