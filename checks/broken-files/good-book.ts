/**
 * A small book in which every kind of record stands once, to be broken one thing at a time.
 * Invented throughout. Each line is plain data, so that a change may be as wrong as it likes.
 */
export type Line = Readonly<Record<string, unknown>>;

const DAY = '2027-02-06';

/** The id of the record on a line; the numbers are those of the lines. */
export function idOf(line: number): string {
  return `0195f3c2-0000-7000-8000-${String(line).padStart(12, '0')}`;
}

const header: Line = { book: 'cratebook/1', group: 'wrenfield', season: 'spring-2027' };

const records: readonly Line[] = [
  {
    kind: 'season',
    name: 'Spring 2027',
    currency: 'USD',
    starts: '2027-02-01',
    ends: '2027-04-18',
    deadlines: [{ deadline: 'choices', name: 'Prize choices', date: '2027-04-01' }],
  },
  { kind: 'product', product: 'honey', name: 'Honey', price: 800, case: 12 },
  { kind: 'product', product: 'jam', name: 'Jam', price: 650, case: 6, from: '2027-02-01' },
  { kind: 'family', family: 'wren', name: 'Robin Wren', language: 'en', contact: 'by letter' },
  { kind: 'seller', seller: 'ada', name: 'Ada W.', family: 'wren', goal: 100, active: true },
  { kind: 'seller', seller: 'ben', name: 'Ben W.', family: 'wren', active: true },
  { kind: 'host', host: 'market', name: 'Market hall' },
  { kind: 'neighbour', neighbour: 'hill', name: 'Hill group' },
  {
    kind: 'stall',
    stall: 'quay',
    host: 'market',
    starts: `${DAY}T09:00`,
    ends: `${DAY}T12:00`,
    shifts: [{ seller: 'ada', from: '09:00', to: '12:00' }],
  },
  { kind: 'level', level: 'bronze', units: 1, prize: 'Cap', choices: ['red', 'blue'], each: true },
  { kind: 'choice', seller: 'ada', level: 'bronze', choice: 'red' },
  {
    kind: 'proceeds',
    steps: [{ from: 0, cents: 50 }],
    basis: 'average',
    waiver: { cents: 5 },
  },
  { kind: 'hold', product: 'jam', lot: 'L7', reason: 'Lid does not close', lifted: true },
  { kind: 'order', date: DAY, seller: 'ada', lines: { honey: 2 }, gifts: { jam: 1 }, paid: 0 },
  { kind: 'supply-order', date: DAY, lines: { honey: 24 }, expected: '2027-02-10' },
  {
    kind: 'delivery',
    date: DAY,
    lines: { honey: 60, jam: 60 },
    lots: [{ product: 'honey', lot: 'L1', bestBefore: '2028-01-31', units: 60 }],
    short: { jam: 1 },
  },
  { kind: 'swap-in', date: DAY, neighbour: 'hill', lines: { jam: 2 }, slip: 'S-1' },
  { kind: 'swap-out', date: DAY, neighbour: 'hill', lines: { honey: 2 } },
  { kind: 'exchange', date: DAY, lines: { jam: 1 } },
  { kind: 'handover', date: DAY, seller: 'ada', lines: { honey: 5, jam: 3 }, slip: 'G-1' },
  { kind: 'return', date: DAY, seller: 'ada', lines: { jam: 1 } },
  { kind: 'pass', date: DAY, from: 'ada', to: 'ben', lines: { honey: 1 } },
  {
    kind: 'online',
    date: DAY,
    order: 'O-1',
    lines: { honey: 1 },
    gifts: { jam: 1 },
    paid: 1450,
    sent: 'post',
  },
  { kind: 'gift', date: DAY, lines: { jam: 1 }, from: 'supplier', order: 'O-1' },
  {
    kind: 'stall-close',
    date: DAY,
    stall: 'quay',
    out: { honey: 10, jam: 6 },
    back: { honey: 3, jam: 1 },
    damaged: { jam: 1 },
    float: 2000,
    cash: 6500,
    cards: 4000,
    cheques: 0,
    paidout: 100,
    tally: { 500: 13 },
    counters: ['Sam Hill', 'Jo Reed'],
  },
  {
    kind: 'shareout',
    date: DAY,
    pool: 'stall:quay',
    lines: { ada: { honey: 4, jam: 2 }, ben: { honey: 3 } },
  },
  { kind: 'payment', date: DAY, seller: 'ada', tender: 'cheque', cents: 3000, receipt: 'R-1' },
  { kind: 'refund', date: DAY, seller: 'ada', cents: 100, tender: 'cash' },
  { kind: 'deposit', date: DAY, cents: 5000, items: [idOf(28)], slip: 'B-1' },
  { kind: 'card-settle', date: DAY, cents: 3900, fee: 100, to: 'bank' },
  { kind: 'debit', date: DAY, cents: 2000, announced: 2000 },
  { kind: 'debit-returned', date: DAY, debit: idOf(32), fee: 10 },
  { kind: 'bank-fee', date: DAY, cents: 25 },
  { kind: 'bounced', date: DAY, payment: idOf(28), fee: 15, charge: true },
  { kind: 'loss', date: DAY, lines: { jam: 1 }, reason: 'Fell off the shelf' },
  { kind: 'found', date: DAY, lines: { jam: 1 }, reason: 'Was behind the door' },
  { kind: 'count', date: DAY, lines: { honey: 40, jam: 0 }, counters: ['Sam Hill', 'Jo Reed'] },
  { kind: 'settle', date: DAY, proceeds: 500 },
  { kind: 'payment', date: DAY, seller: 'ben', tender: 'cash', cents: 700, replaces: idOf(41) },
  { kind: 'payment', date: DAY, seller: 'ben', tender: 'cash', cents: 70 },
  { kind: 'payment', date: DAY, seller: 'ben', tender: 'cash', cents: 700 },
  { kind: 'void', voids: idOf(42), reason: 'Keyed twice' },
];

/** The book's lines as data, the header first: line n stands at n − 1. */
export const goodBook: readonly Line[] = [
  header,
  ...records.map((record, index) => ({
    id: idOf(index + 2),
    at: `2027-02-06T18:${String(index).padStart(2, '0')}:00.000Z`,
    by: 'manager',
    ...record,
  })),
];

/** The line on which the first record of a kind stands. */
export function lineOf(kind: string): number {
  return goodBook.findIndex((line) => line.kind === kind) + 1;
}
