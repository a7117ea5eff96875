import type { Ledger } from '../ledger/ledger.ts';
import type { Lines } from '../records/fields.ts';
import type { MovementRecord, RecordOf } from '../records/record.ts';
import { valueOfLines } from './value-of-lines.ts';

/**
 * What one record means for the account of a seller: which parts of the sum it changes, the goods
 * it is about, the goods the seller then holds, and the credit. This is worked out apart from the
 * ledger's posting rules on purpose: family-account.ts holds the one against the other.
 */
export interface AccountEntry {
  /** Id of the record; a pass within a family gives two entries of one record. */
  readonly record: string;
  readonly date: string;
  readonly seller: string;
  readonly event: AccountEvent;
  /** Units the record names for this seller, by product; empty where it is about money alone. */
  readonly lines: Lines;
  readonly parts: readonly AccountPart[];
  /** Units by which the seller holds more (negative: less), by product. */
  readonly held: Readonly<Record<string, number>>;
  /** Units of credit gained (negative: given up), by product. */
  readonly credited: Readonly<Record<string, number>>;
  /** Units of an online order that were bought to be given away. */
  readonly gifts?: Lines;
  /** The other seller of a pass. */
  readonly other?: string;
  /** Receipt, slip or order number as written. */
  readonly reference?: string;
  readonly tender?: 'cash' | 'cheque' | 'card';
  readonly note?: string;
}

export type AccountEvent =
  | 'goods-out'
  | 'goods-back'
  | 'received'
  | 'passed-on'
  | 'posted-order'
  | 'online-order'
  | 'gift-units'
  | 'payment'
  | 'refund'
  | 'cheque-back'
  | 'given-up'
  | 'share-out';

/** A part of the sum: whole units and minor units, neither ever negative. */
export interface AccountPart {
  readonly part: PartName;
  readonly units: number;
  readonly minor: number;
}

/** Which way each part counts towards what is still to pay. */
export const partSign = {
  taken: 1,
  received: 1,
  posted: 1,
  gifts: 1,
  broughtBack: -1,
  passedOn: -1,
  paid: -1,
  bounced: 1,
  bankFees: 1,
  paidOnline: -1,
  refunded: 1,
  givenUp: -1,
} as const satisfies Record<string, 1 | -1>;

export type PartName = keyof typeof partSign;

/** Part names in the order in which a statement adds them up. */
export const partNames = [
  'taken',
  'received',
  'posted',
  'gifts',
  'broughtBack',
  'passedOn',
  'paid',
  'bounced',
  'bankFees',
  'paidOnline',
  'refunded',
  'givenUp',
] as const satisfies readonly PartName[];

const NONE: Lines = {};

/** The entries of a movement: one a seller it touches, none where it touches no account. */
export function accountEntries(movement: MovementRecord, ledger: Ledger): AccountEntry[] {
  switch (movement.kind) {
    case 'handover':
      return [{ ...goodsOut(movement, movement.seller, 'taken', ledger), event: 'goods-out' }];
    case 'return':
      return [
        { ...goodsIn(movement, movement.seller, 'broughtBack', ledger), event: 'goods-back' },
      ];
    case 'pass':
      return passEntries(movement, ledger);
    case 'online':
      return onlineEntries(movement, ledger);
    case 'gift':
      return giftEntries(movement, ledger);
    case 'shareout':
      return shareoutEntries(movement);
    case 'payment':
      return [moneyEntry(movement, movement.seller, 'payment', 'paid', movement.cents)];
    case 'refund':
      return [moneyEntry(movement, movement.seller, 'refund', 'refunded', movement.cents)];
    case 'bounced':
      return bouncedEntries(movement, ledger);
    case 'loss':
      return movement.seller === undefined
        ? []
        : [moneyEntry(movement, movement.seller, 'given-up', 'givenUp', movement.cents ?? 0)];
    default:
      return [];
  }
}

function passEntries(pass: RecordOf<'pass'>, ledger: Ledger): AccountEntry[] {
  return [
    { ...goodsIn(pass, pass.from, 'passedOn', ledger), event: 'passed-on', other: pass.to },
    { ...goodsOut(pass, pass.to, 'received', ledger), event: 'received', other: pass.from },
  ];
}

function onlineEntries(online: RecordOf<'online'>, ledger: Ledger): AccountEntry[] {
  if (online.seller === undefined) return [];
  const byPost = online.sent === 'post';
  const paid: AccountPart = { part: 'paidOnline', units: 0, minor: online.paid };
  return [
    {
      ...common(online, online.seller),
      event: byPost ? 'posted-order' : 'online-order',
      lines: online.lines,
      parts: byPost ? [partOf('posted', online, ledger), paid] : [paid],
      held: NONE,
      credited: byPost ? online.lines : NONE,
      reference: online.order,
      ...(online.gifts === undefined ? {} : { gifts: online.gifts }),
    },
  ];
}

function giftEntries(gift: RecordOf<'gift'>, ledger: Ledger): AccountEntry[] {
  if (gift.seller === undefined) return [];
  return [
    {
      ...common(gift, gift.seller),
      event: 'gift-units',
      lines: gift.lines,
      parts: [partOf('gifts', gift, ledger)],
      held: NONE,
      credited: gift.lines,
      ...(gift.order === undefined ? {} : { reference: gift.order }),
    },
  ];
}

function shareoutEntries(shareout: RecordOf<'shareout'>): AccountEntry[] {
  return Object.entries(shareout.lines).map(([seller, lines]) => ({
    ...common(shareout, seller),
    event: 'share-out',
    lines,
    parts: [],
    held: NONE,
    credited: lines,
  }));
}

/** A cheque that came back is owed again, by whoever the payment now stands for. */
function bouncedEntries(bounced: RecordOf<'bounced'>, ledger: Ledger): AccountEntry[] {
  const payment = ledger.standing.currentOf(bounced.payment);
  if (payment?.kind !== 'payment') return [];
  const entry = moneyEntry(bounced, payment.seller, 'cheque-back', 'bounced', payment.cents);
  const fee = bounced.charge === true ? (bounced.fee ?? 0) : 0;
  const fees: AccountPart[] = fee === 0 ? [] : [{ part: 'bankFees', units: 0, minor: fee }];
  return [{ ...entry, parts: [...entry.parts, ...fees] }];
}

type WithLines = Readonly<{ id: string; date: string; lines: Lines; note?: string; slip?: string }>;

/** Goods that the seller now has, and owes the price of. */
function goodsOut(record: WithLines, seller: string, part: PartName, ledger: Ledger) {
  return {
    ...common(record, seller),
    lines: record.lines,
    parts: [partOf(part, record, ledger)],
    held: record.lines,
    credited: record.lines,
    ...(record.slip === undefined ? {} : { reference: record.slip }),
  };
}

/** Goods that the seller no longer has. */
function goodsIn(record: WithLines, seller: string, part: PartName, ledger: Ledger) {
  const less = Object.fromEntries(
    Object.entries(record.lines).map(([product, units]) => [product, -units]),
  );
  return { ...goodsOut(record, seller, part, ledger), held: less, credited: less };
}

function moneyEntry(
  record: Readonly<{
    id: string;
    date: string;
    note?: string;
    receipt?: string;
    tender?: 'cash' | 'cheque' | 'card';
  }>,
  seller: string,
  event: AccountEvent,
  part: PartName,
  minor: number,
): AccountEntry {
  return {
    ...common(record, seller),
    event,
    lines: NONE,
    parts: [{ part, units: 0, minor }],
    held: NONE,
    credited: NONE,
    ...(record.receipt === undefined ? {} : { reference: record.receipt }),
    ...(record.tender === undefined ? {} : { tender: record.tender }),
  };
}

function common(record: Readonly<{ id: string; date: string; note?: string }>, seller: string) {
  return {
    record: record.id,
    date: record.date,
    seller,
    ...(record.note === undefined ? {} : { note: record.note }),
  };
}

function partOf(
  part: PartName,
  record: Readonly<{ lines: Lines; date: string }>,
  ledger: Ledger,
): AccountPart {
  return { part, ...valueOfLines(ledger, record.lines, record.date) };
}
