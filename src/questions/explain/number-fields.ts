import type { MovementRecord, RecordOf } from '../../records/record.ts';
import { asMovement } from './as-record.ts';

/**
 * The keyed numbers of a movement, each with the way to it. What a movement posts is linear in
 * them: changing one number by so much changes the balances by so many times what one posts.
 */
export interface NumberField {
  /** The field: `lines`, `out`, `cents` and so on. */
  readonly part: string;
  /** The product of goods; undefined for money. */
  readonly product?: string;
  /** The seller within the lines of a share-out. */
  readonly seller?: string;
  /** Whole units or minor units, as keyed. */
  readonly value: number;
}

type Goods = Readonly<Record<string, number>>;

/** Every number of a movement that moves something. */
export function numberFields(record: MovementRecord): NumberField[] {
  switch (record.kind) {
    case 'delivery':
    case 'swap-in':
    case 'swap-out':
    case 'handover':
    case 'return':
    case 'pass':
    case 'gift':
    case 'found':
      return goodsFields('lines', record.lines);
    case 'online':
      return onlineFields(record);
    case 'stall-close':
      return stallFields(record);
    case 'shareout':
      return shareoutFields(record);
    case 'payment':
    case 'refund':
    case 'deposit':
    case 'debit':
    case 'bank-fee':
      return [{ part: 'cents', value: record.cents }];
    case 'card-settle':
      return [...moneyField('cents', record.cents), ...moneyField('fee', record.fee)];
    case 'bounced':
    case 'debit-returned':
      return moneyField('fee', record.fee);
    case 'loss':
      return [...goodsFields('lines', record.lines), ...moneyField('cents', record.cents)];
    case 'settle':
      return [{ part: 'proceeds', value: record.proceeds }];
    case 'order':
    case 'supply-order':
    case 'exchange':
    case 'count':
      return [];
  }
}

function moneyField(part: string, value: number | undefined): NumberField[] {
  return value === undefined ? [] : [{ part, value }];
}

function onlineFields(record: RecordOf<'online'>): NumberField[] {
  const lines = record.sent === 'post' ? goodsFields('lines', record.lines) : [];
  return [...lines, { part: 'paid', value: record.paid }];
}

function stallFields(record: RecordOf<'stall-close'>): NumberField[] {
  return [
    ...goodsFields('out', record.out),
    ...goodsFields('back', record.back),
    ...goodsFields('damaged', record.damaged),
    { part: 'cash', value: record.cash },
    { part: 'float', value: record.float },
    { part: 'cards', value: record.cards },
    { part: 'cheques', value: record.cheques },
    { part: 'paidout', value: record.paidout ?? 0 },
  ];
}

function shareoutFields(record: RecordOf<'shareout'>): NumberField[] {
  return Object.entries(record.lines).flatMap(([seller, lines]) =>
    goodsFields('lines', lines).map((field) => ({ ...field, seller })),
  );
}

function goodsFields(part: string, goods: Goods | undefined): NumberField[] {
  return Object.entries(goods ?? {}).map(([product, value]) => ({ part, product, value }));
}

/** Parts in which a number of 0 stays written; elsewhere a product without units is left out. */
const MAY_BE_ZERO: ReadonlySet<string> = new Set(['out', 'back', 'damaged']);

/**
 * The record with another number in one place. A line without units is left out.
 * @param value whole, 0 or more
 */
export function withNumber(
  record: MovementRecord,
  field: Omit<NumberField, 'value'>,
  value: number,
): MovementRecord {
  const { part, product, seller } = field;
  if (product === undefined) return { ...record, [part]: value };
  const held = Reflect.get(record, part) ?? {};
  if (seller === undefined) {
    return { ...record, [part]: withLine(held, product, value, MAY_BE_ZERO.has(part)) };
  }
  const own = Object.hasOwn(held, seller) ? held[seller] : {};
  const lines = withLine(own, product, value, false);
  const others = Object.entries(held).filter(([each]) => each !== seller);
  const kept = Object.keys(lines).length === 0 ? [] : [[seller, lines]];
  return { ...record, [part]: Object.fromEntries([...others, ...kept]) };
}

function withLine(lines: Goods, product: string, value: number, keepsZero: boolean): Goods {
  if (value !== 0 || keepsZero) return { ...lines, [product]: value };
  return Object.fromEntries(Object.entries(lines).filter(([each]) => each !== product));
}

/** The record with every number at nothing, to see what one number alone posts. */
export function withoutNumbers(record: MovementRecord): MovementRecord {
  const blank: Record<string, unknown> = { ...record };
  for (const part of ['lines', 'out', 'back', 'damaged']) {
    if (part in blank) blank[part] = {};
  }
  for (const part of ['cash', 'float', 'cards', 'cheques', 'paidout', 'cents', 'fee', 'paid']) {
    if (part in blank) blank[part] = 0;
  }
  if ('proceeds' in blank) blank.proceeds = 0;
  if (record.kind === 'stall-close') blank.paidout = 0;
  return asMovement(blank);
}
