import type { BookRecord } from '../../records/record.ts';
import type { Draft } from '../draft.ts';
import { say } from '../say.ts';

/**
 * The made-up book that help is told on: a group of two sellers in its sixth week. It is folded by
 * the same ledger as a real book and kept nowhere.
 */
const AT_MS = Date.UTC(2027, 1, 1, 18);
const MINUTE_MS = 60_000;

/** Today in the made-up book: the day of its second stall. */
export const MADE_UP_TODAY = '2027-03-13';

/** A draft as the record number so-and-so of the made-up book. */
export function madeUpRecord(draft: Draft, number: number): BookRecord {
  const at = new Date(AT_MS + number * MINUTE_MS).toISOString();
  // The draft carries its own kind's fields; the compiler cannot follow the union through a spread.
  return { id: idOf(number), at, by: 'example', ...draft } as BookRecord;
}

function idOf(number: number): string {
  return `0195f3c2-7d1a-7c3e-9a41-${String(number).padStart(12, '0')}`;
}

const setUp: readonly Draft[] = [
  {
    kind: 'season',
    name: say`Made-up example`,
    currency: 'USD',
    starts: '2027-02-01',
    ends: '2027-04-18',
    group: 'Wrenfield Young Rowers',
    deadlines: [
      { deadline: 'debit-1', name: say`First debit`, date: '2027-03-19', announced: 5000 },
    ],
  },
  { kind: 'product', product: 'honey', name: say`Wildflower honey`, price: 800, case: 6 },
  { kind: 'product', product: 'jam', name: say`Strawberry jam`, price: 650, case: 6 },
  { kind: 'family', family: 'moor', name: 'Dana Moor' },
  { kind: 'family', family: 'brook', name: 'Kim Brook' },
  { kind: 'seller', seller: 'ada', name: 'Ada M.', family: 'moor', goal: 20, active: true },
  { kind: 'seller', seller: 'ben', name: 'Ben B.', family: 'brook', goal: 15, active: true },
  { kind: 'host', host: 'quay', name: 'Quay Street shop' },
  { kind: 'neighbour', neighbour: 'millbrook', name: 'Millbrook Young Sailors' },
  stall('quay-0306', '2027-03-06'),
  stall('quay-0313', MADE_UP_TODAY),
  { kind: 'level', level: 'mug', units: 5, prize: say`Mug`, choices: [say`blue`, say`green`] },
];

function stall(id: string, day: string): Draft<'stall'> {
  const shifts = ['ada', 'ben'].map((seller) => ({ seller, from: '09:00', to: '12:00' }));
  const [starts, ends] = [`${day}T09:00`, `${day}T12:00`];
  return { kind: 'stall', stall: id, host: 'quay', starts, ends, shifts };
}

/** Number of the payment that was keyed twice. */
const DOUBLED = 18;
export const doubledPayment = idOf(DOUBLED);

const benPays: Draft<'payment'> = {
  kind: 'payment',
  date: '2027-02-20',
  seller: 'ben',
  tender: 'cash',
  cents: 3200,
  receipt: 'EX1-002',
};

const moved: readonly Draft[] = [
  { kind: 'delivery', date: '2027-02-08', lines: { honey: 36, jam: 24 }, slip: 'L-101' },
  { kind: 'handover', date: '2027-02-10', seller: 'ada', lines: { honey: 6, jam: 2 } },
  { kind: 'handover', date: '2027-02-10', seller: 'ben', lines: { honey: 4 } },
  {
    kind: 'payment',
    date: '2027-02-20',
    seller: 'ada',
    tender: 'cash',
    cents: 3000,
    receipt: 'EX1-001',
  },
  benPays,
  benPays,
  { kind: 'deposit', date: '2027-02-22', cents: 6200, slip: 'D-1' },
  {
    kind: 'stall-close',
    date: '2027-03-06',
    stall: 'quay-0306',
    out: { honey: 10, jam: 6 },
    back: { honey: 3, jam: 1 },
    float: 2000,
    cash: 6850,
    cards: 4000,
    cheques: 0,
  },
];

/** The whole made-up book, the first record first. */
export function madeUpRecords(): readonly BookRecord[] {
  return [...setUp, ...moved].map((draft, at) => madeUpRecord(draft, at + 1));
}
