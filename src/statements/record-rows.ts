import type { Ledger } from '../ledger/ledger.ts';
import type { Lines } from '../records/fields.ts';
import { type BookRecord, isMovement } from '../records/record.ts';

/**
 * Records as flat rows for a spreadsheet: a row for each line of goods and each sum of money that a
 * record names, at least one a record. The book file is the whole; these are for looking and adding
 * up, so what has no place in a table (shifts, deadlines, lots, tallies) stays out.
 */
export interface RecordRow {
  readonly record: string;
  readonly written: string;
  readonly by: string;
  /** False where an edit or a removal took its place, or where it lost a conflict. */
  readonly counts: boolean;
  readonly kind: string;
  readonly date: string;
  /** Seller, family, neighbour, stall, pool: whom or what the row is about, by id. */
  readonly about: string;
  /** The field of the record that the row is from: `lines`, `gifts`, `back`, `cents`, `float`, … */
  readonly part: string;
  readonly product: string;
  readonly units: number | undefined;
  /** Minor units: the price of a unit on the day, for goods in movements. */
  readonly price: number | undefined;
  /** Minor units: the worth of the row's units, or the sum of money it names. */
  readonly amount: number | undefined;
  /** Tender, `post` or `hand`, where from or where to. */
  readonly way: string;
  /** Slip, receipt or order number. */
  readonly reference: string;
  /** The id of the record that this one edits, removes or answers. */
  readonly pointsAt: string;
  readonly text: string;
}

/** A whole number of a row: units, or minor units of money. */
export interface RowFigure {
  readonly whole: number | undefined;
  readonly of: 'units' | 'money';
}

/** A row's values in the order of the columns of every export. */
export function rowValues(row: RecordRow): (string | RowFigure)[] {
  return [
    row.record,
    row.written,
    row.by,
    row.counts ? 'yes' : 'no',
    row.kind,
    row.date,
    row.about,
    row.part,
    row.product,
    { whole: row.units, of: 'units' },
    { whole: row.price, of: 'money' },
    { whole: row.amount, of: 'money' },
    row.way,
    row.reference,
    row.pointsAt,
    row.text,
  ];
}

type Part = Pick<RecordRow, 'part'> & Partial<RecordRow>;

export function* recordRows(ledger: Ledger): Generator<RecordRow> {
  for (const record of ledger.standing.records()) {
    const common = commonOf(record, ledger.standing.counts(record));
    const parts = partsOf(record, ledger);
    if (parts.length === 0) yield common;
    for (const part of parts) yield { ...common, ...part };
  }
}

function commonOf(record: BookRecord, counts: boolean): RecordRow {
  return {
    record: record.id,
    written: record.at,
    by: record.by,
    counts,
    kind: record.kind,
    date: isMovement(record) ? record.date : '',
    about: aboutOf(record),
    part: '',
    product: 'product' in record ? record.product : '',
    units: undefined,
    price: undefined,
    amount: undefined,
    way: wayOf(record),
    reference: referenceOf(record),
    pointsAt: pointsAtOf(record),
    text: textOf(record),
  };
}

function aboutOf(record: BookRecord): string {
  if (record.kind === 'pass') return record.to;
  if ('seller' in record) return record.seller ?? '';
  if ('family' in record) return record.family;
  if ('neighbour' in record) return record.neighbour;
  if ('stall' in record) return record.stall;
  if ('pool' in record) return record.pool;
  if ('host' in record) return record.host;
  if ('level' in record) return record.level;
  return '';
}

function wayOf(record: BookRecord): string {
  if ('tender' in record) return record.tender;
  if ('sent' in record) return record.sent;
  if (record.kind === 'card-settle') return record.to;
  if (record.kind === 'gift' || record.kind === 'pass') return record.from;
  return '';
}

function referenceOf(record: BookRecord): string {
  if ('slip' in record) return record.slip ?? '';
  if ('receipt' in record) return record.receipt ?? '';
  if (record.kind === 'online' || record.kind === 'gift') return record.order ?? '';
  return '';
}

function pointsAtOf(record: BookRecord): string {
  if (record.kind === 'void') return record.voids;
  if (record.kind === 'bounced') return record.replaces ?? record.payment;
  if (record.kind === 'debit-returned') return record.replaces ?? record.debit;
  return record.replaces ?? '';
}

function textOf(record: BookRecord): string {
  const texts = [
    'name' in record ? record.name : '',
    'prize' in record ? record.prize : '',
    'choice' in record ? record.choice : '',
    'reason' in record ? record.reason : '',
    record.note ?? '',
  ];
  return texts.filter((text) => text !== '').join('; ');
}

const GOODS = ['lines', 'gifts', 'out', 'back', 'damaged', 'short'] as const;
const MONEY = [
  'cents',
  'paid',
  'proceeds',
  'float',
  'cash',
  'cards',
  'cheques',
  'paidout',
  'announced',
  'fee',
] as const;

function partsOf(record: BookRecord, ledger: Ledger): Part[] {
  if (record.kind === 'shareout') {
    return Object.entries(record.lines).flatMap(([seller, lines]) =>
      Object.entries(lines).map(([product, units]) => ({
        part: 'lines',
        about: seller,
        way: record.pool,
        product,
        units,
      })),
    );
  }
  if (record.kind === 'product')
    return [{ part: 'price', amount: record.price, units: record.case }];
  if (record.kind === 'proceeds') {
    return record.steps.map(({ from, cents }) => ({ part: 'steps', units: from, amount: cents }));
  }
  if (!isMovement(record)) return setupUnits(record);
  // The kinds share these field names, each with one meaning; every one of them is looked for.
  const fields: Readonly<Record<string, unknown>> = { ...record };
  const goods = GOODS.flatMap((part) => goodsParts(part, fields[part], record.date, ledger));
  const money = MONEY.flatMap((part) => {
    const amount = fields[part];
    return typeof amount === 'number' ? [{ part, amount }] : [];
  });
  return [...goods, ...money];
}

function setupUnits(record: BookRecord): Part[] {
  if (record.kind === 'seller' && record.goal !== undefined) {
    return [{ part: 'goal', units: record.goal }];
  }
  return record.kind === 'level' ? [{ part: 'units', units: record.units }] : [];
}

function goodsParts(part: string, lines: unknown, date: string, ledger: Ledger): Part[] {
  if (!isLines(lines)) return [];
  return Object.entries(lines).map(([product, units]) => {
    const price = ledger.priceOn(product, date);
    return { part, product, units, price, amount: units * price };
  });
}

function isLines(value: unknown): value is Lines {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
