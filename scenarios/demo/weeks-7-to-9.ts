import type { PlannedDay } from '../planned.ts';

/** Mid March to the last count: the last stalls, the last payments, and five things gone wrong. */
export const weeks7To9: readonly PlannedDay[] = [
  {
    day: '2027-03-12',
    records: [
      {
        kind: 'delivery',
        lines: { jam: 12, chutney: 12, granola: 16, 'tea-mint': 20 },
        slip: 'LG-1102',
        depot: 'Larkmead yard',
        lots: [{ product: 'granola', lot: 'G27-09', bestBefore: '2027-12-31', units: 16 }],
      },
      {
        kind: 'stall',
        stall: 'market-0320',
        host: 'market',
        starts: '2027-03-20T09:00',
        ends: '2027-03-20T13:00',
        shifts: [
          { seller: 'ines', from: '09:00', to: '13:00' },
          { seller: 'mei', from: '09:00', to: '11:00' },
          { seller: 'rui', from: '11:00', to: '13:00' },
        ],
      },
      {
        kind: 'stall',
        stall: 'garden-0327',
        host: 'garden',
        starts: '2027-03-27T10:00',
        ends: '2027-03-27T14:00',
        shifts: [
          { seller: 'chidera', from: '10:00', to: '14:00' },
          { seller: 'noa', from: '10:00', to: '14:00' },
          { seller: 'petr', from: '10:00', to: '12:00' },
          { seller: 'rui', from: '12:00', to: '14:00' },
        ],
      },
    ],
  },
  {
    day: '2027-03-13',
    records: [
      {
        kind: 'stall-close',
        stall: 'garden-0313',
        out: { honey: 10, jam: 8, chutney: 6, granola: 6, 'granola-nut': 4, 'tea-berry': 10 },
        back: { honey: 3, jam: 2, chutney: 3, granola: 1, 'granola-nut': 1, 'tea-berry': 5 },
        float: 5000,
        cash: 19175,
        cards: 8000,
        cheques: 0,
        counters: ['Folasade Adéyẹmí', '李明'],
        by: 'stall',
      },
      {
        kind: 'shareout',
        pool: 'stall:garden-0313',
        lines: {
          jun: { chutney: 1, granola: 2, 'granola-nut': 2, honey: 4, jam: 3, 'tea-berry': 3 },
          tobi: { chutney: 2, granola: 3, 'granola-nut': 1, honey: 3, jam: 3, 'tea-berry': 2 },
        },
      },
    ],
  },
  {
    day: '2027-03-14',
    records: [
      {
        kind: 'count',
        lines: {
          honey: 32,
          jam: 35,
          marmalade: 4,
          chutney: 21,
          granola: 21,
          'granola-nut': 15,
          'tea-mint': 43,
          'tea-berry': 36,
        },
        counters: ['Nuño Castillo', 'Sam Winter'],
      },
    ],
  },
  {
    day: '2027-03-15',
    records: [
      { kind: 'payment', seller: 'reka', tender: 'cash', cents: 5150, receipt: 'R-016' },
      { kind: 'payment', seller: 'tobi', tender: 'card', cents: 12850, receipt: 'R-017' },
      { kind: 'payment', seller: 'mei', tender: 'cash', cents: 14375, receipt: 'R-018' },
      { kind: 'deposit', cents: 62675, slip: 'D-5', by: 'treasurer' },
      { kind: 'handover', seller: 'ada', lines: { honey: 6, granola: 4 }, slip: 'G-021' },
      {
        kind: 'handover',
        seller: 'ines',
        lines: { honey: 6, jam: 4, 'granola-nut': 3 },
        slip: 'G-022',
      },
      { kind: 'handover', seller: 'layla', lines: { 'tea-berry': 6 }, slip: 'G-023' },
    ],
  },
  {
    day: '2027-03-16',
    records: [
      {
        // Wrong, the first of five: the slip says 21 mint teas.
        ref: 'noa-mint',
        kind: 'handover',
        seller: 'noa',
        lines: { jam: 4, 'tea-mint': 12 },
        slip: 'G-024',
      },
    ],
  },
  // Wrong, the second of five: on 18 March six jars of jam went to Fernhill and nobody wrote it
  // down.
  {
    day: '2027-03-20',
    records: [
      {
        kind: 'stall-close',
        stall: 'market-0320',
        out: {
          honey: 10,
          jam: 10,
          chutney: 8,
          granola: 8,
          'granola-nut': 6,
          'tea-mint': 10,
          'tea-berry': 10,
        },
        back: {
          honey: 3,
          jam: 3,
          chutney: 3,
          granola: 3,
          'granola-nut': 2,
          'tea-mint': 4,
          'tea-berry': 5,
        },
        float: 5000,
        cash: 23100,
        cards: 10000,
        cheques: 0,
        counters: ['Nuño Castillo', 'João Pereira'],
        by: 'stall',
      },
      {
        kind: 'shareout',
        pool: 'stall:market-0320',
        lines: {
          ines: {
            chutney: 3,
            granola: 3,
            'granola-nut': 2,
            honey: 3,
            jam: 3,
            'tea-berry': 3,
            'tea-mint': 3,
          },
          mei: {
            chutney: 1,
            granola: 1,
            'granola-nut': 1,
            honey: 2,
            jam: 2,
            'tea-berry': 1,
            'tea-mint': 1,
          },
          rui: {
            chutney: 1,
            granola: 1,
            'granola-nut': 1,
            honey: 2,
            jam: 2,
            'tea-berry': 1,
            'tea-mint': 2,
          },
        },
      },
    ],
  },
  {
    day: '2027-03-22',
    records: [
      {
        // Wrong, the third of five: the four gift teas were never recorded as given.
        kind: 'online',
        order: 'O-533',
        seller: 'mei',
        lines: { honey: 2 },
        gifts: { 'tea-berry': 4 },
        paid: 3800,
        sent: 'post',
      },
      {
        kind: 'handover',
        seller: 'linnea',
        lines: { marmalade: 4, 'tea-berry': 5 },
        slip: 'G-025',
      },
      { kind: 'handover', seller: 'petr', lines: { jam: 3, chutney: 4 }, slip: 'G-026' },
      { kind: 'payment', seller: 'jun', tender: 'cash', cents: 3875, receipt: 'R-019' },
      { kind: 'payment', seller: 'linnea', tender: 'cash', cents: 3425, receipt: 'R-020' },
      { kind: 'payment', seller: 'bia', tender: 'cash', cents: 9150, receipt: 'R-021' },
      { kind: 'payment', seller: 'layla', tender: 'card', cents: 11900, receipt: 'R-022' },
      { kind: 'deposit', cents: 34550, slip: 'D-6', by: 'treasurer' },
      { kind: 'card-settle', cents: 30300, fee: 550, to: 'bank', by: 'treasurer' },
    ],
  },
  {
    day: '2027-03-26',
    records: [{ kind: 'debit', cents: 150000, announced: 150000, by: 'treasurer' }],
  },
  {
    day: '2027-03-27',
    records: [
      {
        // Wrong, the fourth of five: this stall was not shared out.
        kind: 'stall-close',
        stall: 'garden-0327',
        out: {
          honey: 13,
          jam: 11,
          chutney: 12,
          granola: 12,
          'granola-nut': 8,
          'tea-mint': 16,
          'tea-berry': 20,
        },
        back: {
          honey: 4,
          jam: 3,
          chutney: 4,
          granola: 4,
          'granola-nut': 3,
          'tea-mint': 6,
          'tea-berry': 11,
        },
        float: 5000,
        cash: 31225,
        cards: 14000,
        cheques: 0,
        counters: ['Chidi Okafor', 'Jana Nováková'],
        by: 'stall',
      },
    ],
  },
  {
    day: '2027-03-29',
    records: [
      { kind: 'return', seller: 'jun', lines: { 'tea-berry': 2 } },
      { kind: 'handover', seller: 'rui', lines: { honey: 4, jam: 3 }, slip: 'G-027' },
      {
        kind: 'shareout',
        pool: 'post',
        lines: { chidera: { marmalade: 1 }, mei: { marmalade: 1 }, otto: { marmalade: 1 } },
      },
      {
        kind: 'shareout',
        pool: 'gift',
        lines: {
          ada: { 'tea-berry': 1 },
          ines: { 'tea-berry': 1 },
          linnea: { 'tea-berry': 1 },
          noa: { 'tea-berry': 1 },
          otto: { 'tea-berry': 1 },
          petr: { chutney: 1 },
          reka: { chutney: 1 },
          rui: { chutney: 1 },
          tobi: { chutney: 1 },
        },
      },
      { kind: 'payment', seller: 'ada', tender: 'cash', cents: 26600, receipt: 'R-023' },
      { kind: 'payment', seller: 'ines', tender: 'cash', cents: 10850, receipt: 'R-024' },
      { kind: 'payment', seller: 'layla', tender: 'cash', cents: 3150, receipt: 'R-025' },
      { kind: 'payment', seller: 'linnea', tender: 'cash', cents: 5325, receipt: 'R-026' },
      { kind: 'payment', seller: 'noa', tender: 'cash', cents: 13100, receipt: 'R-027' },
      { kind: 'payment', seller: 'petr', tender: 'cash', cents: 4350, receipt: 'R-028' },
      { kind: 'payment', seller: 'rui', tender: 'cash', cents: 5350, receipt: 'R-029' },
      { kind: 'refund', seller: 'jun', cents: 1050, tender: 'cash', by: 'treasurer' },
      { kind: 'deposit', cents: 93900, slip: 'D-7', by: 'treasurer' },
      { kind: 'card-settle', cents: 25430, fee: 470, to: 'bank', by: 'treasurer' },
    ],
  },
  {
    day: '2027-03-30',
    records: [
      { kind: 'choice', seller: 'ada', level: 'bottle', choice: 'Green' },
      { kind: 'choice', seller: 'ada', level: 'shirt', choice: 'Youth L' },
      { kind: 'choice', seller: 'ines', level: 'bottle', choice: 'Blue' },
      { kind: 'choice', seller: 'ines', level: 'shirt', choice: 'Youth M' },
      { kind: 'choice', seller: 'layla', level: 'bottle', choice: 'Blue' },
      { kind: 'choice', seller: 'mei', level: 'bottle', choice: 'Blue' },
      { kind: 'choice', seller: 'mei', level: 'shirt', choice: 'Youth M' },
      { kind: 'choice', seller: 'tobi', level: 'bottle', choice: 'Green' },
      { kind: 'choice', seller: 'noa', level: 'bottle', choice: 'Green' },
      { kind: 'choice', seller: 'noa', level: 'shirt', choice: 'Adult S' },
      { kind: 'choice', seller: 'chidera', level: 'bottle', choice: 'Blue' },
      { kind: 'choice', seller: 'petr', level: 'bottle', choice: 'Green' },
      { kind: 'choice', seller: 'rui', level: 'bottle', choice: 'Blue' },
      // Otto's family does without the patch.
      { kind: 'choice', seller: 'otto', level: 'patch', choice: 'none' },
    ],
  },
  {
    day: '2027-03-31',
    records: [
      {
        kind: 'swap-out',
        neighbour: 'millbrook',
        lines: { chutney: 4, granola: 4, 'granola-nut': 3, 'tea-mint': 6, 'tea-berry': 13 },
        slip: 'S-4',
      },
      { kind: 'settle', proceeds: 71085, by: 'treasurer' },
    ],
  },
  {
    day: '2027-04-01',
    records: [{ kind: 'debit', cents: 127790, announced: 127790, by: 'treasurer' }],
  },
  {
    day: '2027-04-03',
    records: [
      {
        kind: 'count',
        lines: {
          honey: 0,
          jam: 0,
          marmalade: 0,
          chutney: 0,
          granola: 0,
          'granola-nut': 0,
          'tea-mint': 0,
          'tea-berry': 0,
        },
        counters: ['Robin Marsh', 'Zoë Bergström'],
      },
    ],
  },
];
