import type { BookRecord } from '../../src/records/record.ts';
import { type PlannedDay, recordsOf } from '../planned.ts';

/**
 * A season of three families and one stall with every kind of record in it at least once, which
 * comes out even: short enough to be done by hand in the running app. All of it is invented.
 */
const SEED = 31;

const setUp: PlannedDay = {
  day: '2027-02-01',
  records: [
    {
      kind: 'season',
      name: 'Short 2027',
      currency: 'USD',
      starts: '2027-02-01',
      ends: '2027-03-07',
      group: 'Wrenfield Young Rowers',
      ask: 'Jo Penrose',
      sharing: { weights: 'minutes', method: 'remainder', lift: true },
      deadlines: [{ deadline: 'pay', name: 'Last day to pay', date: '2027-03-05' }],
    },
    {
      kind: 'proceeds',
      basis: 'average',
      steps: [{ from: 0, cents: 100 }],
      waiver: { cents: 10 },
    },
    { kind: 'product', product: 'honey', name: 'Wildflower honey', price: 800, case: 12 },
    { kind: 'product', product: 'jam', name: 'Strawberry jam', price: 650, case: 6 },
    { kind: 'family', family: 'marsh', name: 'Robin Marsh' },
    { kind: 'family', family: 'winter', name: 'Sam Winter', language: 'es' },
    { kind: 'seller', seller: 'ada', name: 'Ada M.', family: 'marsh', goal: 10, active: true },
    { kind: 'seller', seller: 'noa', name: 'Noa W.', family: 'winter', active: true },
    { kind: 'host', host: 'market', name: 'Wrenfield market hall' },
    { kind: 'neighbour', neighbour: 'fernhill', name: 'Fernhill Young Rowers' },
    { kind: 'level', level: 'patch', units: 3, prize: 'Season patch', choices: ['Red', 'Blue'] },
  ],
};

const february: readonly PlannedDay[] = [
  {
    day: '2027-02-04',
    records: [
      { kind: 'order', seller: 'ada', lines: { honey: 6 }, gifts: { jam: 1 }, paid: 1000 },
      { kind: 'supply-order', lines: { honey: 24, jam: 12 }, slip: 'W-1', expected: '2027-02-08' },
    ],
  },
  {
    day: '2027-02-08',
    records: [
      {
        kind: 'delivery',
        lines: { honey: 23, jam: 12 },
        slip: 'L-1',
        depot: 'Larkmead yard',
        short: { honey: 1 },
        lots: [{ product: 'honey', lot: 'H27', bestBefore: '2029-02-28', units: 23 }],
      },
      { kind: 'exchange', lines: { jam: 1 }, note: 'A cracked jar' },
      { kind: 'handover', seller: 'ada', lines: { honey: 6, jam: 2 }, slip: 'G-1' },
      { ref: 'noa', kind: 'handover', seller: 'noa', lines: { honey: 4 }, slip: 'G-2' },
    ],
  },
  {
    day: '2027-02-10',
    records: [
      {
        kind: 'handover',
        replaces: '#noa',
        date: '2027-02-08',
        seller: 'noa',
        lines: { honey: 5 },
        slip: 'G-2',
        note: 'The slip says 5',
      },
      { kind: 'return', seller: 'ada', lines: { jam: 1 } },
      { kind: 'pass', from: 'ada', to: 'noa', lines: { honey: 1 } },
      { kind: 'swap-in', neighbour: 'fernhill', lines: { jam: 2 }, slip: 'S-1' },
      { kind: 'hold', product: 'jam', lot: 'J27', reason: 'Label check' },
      { kind: 'hold', product: 'jam', lot: 'J27', reason: 'Label check', lifted: true },
    ],
  },
  {
    day: '2027-02-12',
    records: [
      { kind: 'online', order: 'O-1', lines: { honey: 1 }, paid: 800, sent: 'post' },
      {
        kind: 'online',
        order: 'O-2',
        seller: 'noa',
        lines: {},
        gifts: { jam: 2 },
        paid: 1300,
        sent: 'post',
      },
      { kind: 'gift', order: 'O-2', seller: 'noa', lines: { jam: 2 }, from: 'supplier' },
      {
        kind: 'stall',
        stall: 'market-0220',
        host: 'market',
        starts: '2027-02-20T09:00',
        ends: '2027-02-20T13:00',
        shifts: [
          { seller: 'ada', from: '09:00', to: '13:00' },
          { seller: 'noa', from: '11:00', to: '13:00' },
        ],
      },
    ],
  },
  {
    day: '2027-02-20',
    records: [
      {
        kind: 'stall-close',
        stall: 'market-0220',
        out: { honey: 8, jam: 6 },
        back: { honey: 2 },
        damaged: { jam: 1 },
        float: 2000,
        cash: 8000,
        cards: 2000,
        cheques: 0,
        paidout: 50,
        note: 'Parking',
        counters: ['Robin Marsh', 'Sam Winter'],
      },
      {
        kind: 'shareout',
        pool: 'stall:market-0220',
        lines: { ada: { honey: 4, jam: 3 }, noa: { honey: 2, jam: 2 } },
      },
    ],
  },
];

const march: readonly PlannedDay[] = [
  {
    day: '2027-03-01',
    records: [
      {
        ref: 'cheque',
        kind: 'payment',
        seller: 'ada',
        tender: 'cheque',
        cents: 4000,
        receipt: 'R-1',
      },
      { ref: 'twice', kind: 'payment', seller: 'ada', tender: 'cash', cents: 650, receipt: 'R-2' },
      { kind: 'payment', seller: 'ada', tender: 'cash', cents: 650, receipt: 'R-2' },
      { kind: 'void', voids: '#twice', reason: 'Keyed twice' },
      { kind: 'payment', seller: 'noa', tender: 'card', cents: 4900, receipt: 'R-3' },
      { kind: 'refund', seller: 'noa', cents: 100, tender: 'card' },
      { kind: 'deposit', cents: 10650, slip: 'D-1' },
      { kind: 'card-settle', cents: 6700, fee: 100, to: 'bank' },
      {
        kind: 'product',
        product: 'jam',
        name: 'Strawberry jam',
        price: 700,
        case: 6,
        from: '2027-03-02',
      },
    ],
  },
  {
    day: '2027-03-04',
    records: [
      { kind: 'bounced', payment: '#cheque', fee: 500, charge: true },
      { kind: 'payment', seller: 'ada', tender: 'cash', cents: 4500, receipt: 'R-4' },
      { kind: 'deposit', cents: 4500, slip: 'D-2' },
      { kind: 'bank-fee', cents: 200 },
      { kind: 'loss', lines: { honey: 2 }, reason: 'Broken in the stockroom' },
      { kind: 'found', lines: { honey: 1 }, reason: 'Behind the shelf' },
      { ref: 'debit', kind: 'debit', cents: 10000, announced: 10000 },
      { kind: 'debit-returned', debit: '#debit', fee: 300 },
      { kind: 'settle', proceeds: 3000 },
    ],
  },
];

const ends: PlannedDay = {
  day: '2027-03-07',
  records: [
    { kind: 'swap-out', neighbour: 'fernhill', lines: { honey: 5, jam: 7 }, slip: 'S-2' },
    { kind: 'debit', cents: 15600, announced: 15600 },
    { kind: 'count', lines: { honey: 0, jam: 0 }, counters: ['Robin Marsh', 'Sam Winter'] },
    { kind: 'shareout', pool: 'post', lines: { noa: { honey: 1 } } },
    { kind: 'choice', seller: 'ada', level: 'patch', choice: 'Blue' },
    { kind: 'choice', seller: 'noa', level: 'patch', choice: 'none' },
  ],
};

export function shortSeason(): BookRecord[] {
  return recordsOf([setUp, ...february, ...march, ends], SEED);
}
