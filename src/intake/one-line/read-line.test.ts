import { describe, expect, it } from 'vitest';
import { NOTE_MAX } from '../../records/fields.ts';
import type { LineDraft } from './line-kind.ts';
import { readLine, TAIL_MAX } from './read-line.ts';
import { context, TODAY } from './test-context.ts';

const read = (line: string, changed?: Parameters<typeof context>[0]) =>
  readLine(line, context(changed));

/** The records that a line may mean; a line that is not understood fails the test by its words. */
function meant(line: string): readonly object[] {
  const answer = read(line);
  if (!answer.ok) throw new Error(`${line}: ${JSON.stringify(answer.refusal)}`);
  return answer.value.map(({ date, ...rest }) => (date === TODAY ? rest : { date, ...rest }));
}

const out = (seller: string, lines: object) => ({ kind: 'handover', seller, lines });
const back = (seller: string, lines: object) => ({ kind: 'return', seller, lines });
const paid = (seller: string, cents: number, tender = 'cash') => ({
  kind: 'payment',
  seller,
  tender,
  cents,
});
const on = (date: string, record: object) => ({ date, ...record });
const pass = (from: string, to: string, lines: object) => ({ kind: 'pass', from, to, lines });

/** One line, one record. */
const LINES: readonly (readonly [line: string, record: object])[] = [
  ['ada out 12 honey 6 jam', out('ada', { honey: 12, jam: 6 })],
  ['out ada honey 12, jam 6', out('ada', { honey: 12, jam: 6 })],
  ['ada takes 2 cases honey', out('ada', { honey: 24 })],
  ['ada out 2c honey', out('ada', { honey: 24 })],
  ['ada out 2c 3 honey', out('ada', { honey: 27 })],
  ['ada out 2 cases and 3 singles honey', out('ada', { honey: 27 })],
  ['ada out honey 2 cases 3 jam 4', out('ada', { honey: 27, jam: 4 })],
  ['ada out 1,200 honey slip 77', { ...out('ada', { honey: 1200 }), slip: '77' }],
  ['ada out 2 honey: for the fair', { ...out('ada', { honey: 2 }), note: 'for the fair' }],
  ['ada out 2 wildflower', out('ada', { honey: 2 })],
  ['ada out 2 mint tea', out('ada', { 'tea-mint': 2 })],
  ['ada out 2 mint teas 1 jams', out('ada', { 'tea-mint': 2, jam: 1 })],
  ['ada out 2 granola', out('ada', { granola: 2 })],
  ['ada out 2 gran-nut', out('ada', { 'granola-nut': 2 })],
  ['INÉS out 2 honey', out('ines', { honey: 2 })],
  ['marsh out 2 honey', out('ada', { honey: 2 })],
  ['jun out 2 honey', out('jun', { honey: 2 })],
  ['back 2 mint ben', back('ben', { 'tea-mint': 2 })],
  ['ben brings back 2 honey yesterday', on('2027-04-07', back('ben', { honey: 2 }))],
  ['ada out 2 honey monday', on('2027-04-05', out('ada', { honey: 2 }))],
  ['ada out 2 honey thursday', out('ada', { honey: 2 })],
  ['ada out 2 honey last thursday', on('2027-04-01', out('ada', { honey: 2 }))],
  ['ada out 2 honey on 3 april', on('2027-04-03', out('ada', { honey: 2 }))],
  ['ada out 2 honey dec 30', on('2026-12-30', out('ada', { honey: 2 }))],
  ['ada out 2 honey 2027-03-31', on('2027-03-31', out('ada', { honey: 2 }))],
  ['ada out 2 honey 3/31', on('2027-03-31', out('ada', { honey: 2 }))],
  ['pay ada 40 cash', paid('ada', 4000)],
  ['pay ada 40', paid('ada', 4000)],
  ['pay marsh 36', paid('ada', 3600)],
  ['ada paid $40.50 by check', paid('ada', 4050, 'cheque')],
  ['pay ada 1,250 card', paid('ada', 125000, 'card')],
  ['pay ada all', paid('ada', 2550)],
  ['pay ada 40 receipt R-7', { ...paid('ada', 4000), receipt: 'R-7' }],
  ['refund ben all', { kind: 'refund', seller: 'ben', tender: 'cash', cents: 500 }],
  ['pass 2 honey from ada to ben', pass('ada', 'ben', { honey: 2 })],
  ['pass 2 honey to ben from ada', pass('ada', 'ben', { honey: 2 })],
  ['ada gives ben 2 honey', pass('ada', 'ben', { honey: 2 })],
  ['swap 12 honey from hill', { kind: 'swap-in', neighbour: 'hill', lines: { honey: 12 } }],
  ['swap out 12 honey ferry', { kind: 'swap-out', neighbour: 'ferry', lines: { honey: 12 } }],
  ['gift 3 honey supplier', { kind: 'gift', from: 'supplier', lines: { honey: 3 } }],
  ['count 12 honey 0 jam', { kind: 'count', lines: { honey: 12, jam: 0 } }],
  ['delivery 4 cases honey slip D-1', { kind: 'delivery', lines: { honey: 48 }, slip: 'D-1' }],
  ['supplier order 4 c jam', { kind: 'supply-order', lines: { jam: 48 } }],
  ['deposit 120', { kind: 'deposit', cents: 12000 }],
  ['debit 300 announced 310', { kind: 'debit', cents: 30000, announced: 31000 }],
  ['card payout 97 fee 3 bank', { kind: 'card-settle', cents: 9700, fee: 300, to: 'bank' }],
  ['bank fee 4', { kind: 'bank-fee', cents: 400 }],
  ['proceeds 500', { kind: 'settle', proceeds: 50000 }],
  ['lost 1 jam: jar broken', { kind: 'loss', lines: { jam: 1 }, reason: 'jar broken' }],
  [
    'write off ben 3: moved away',
    { kind: 'loss', seller: 'ben', cents: 300, reason: 'moved away' },
  ],
  [
    'found 2 jam: behind the crates',
    { kind: 'found', lines: { jam: 2 }, reason: 'behind the crates' },
  ],
  [
    'stall quay sold 7 honey 5 jam float 20 cash 65 cards 40',
    on('2027-04-03', {
      kind: 'stall-close',
      stall: 'quay',
      out: { honey: 7, jam: 5 },
      back: {},
      float: 2000,
      cash: 6500,
      cards: 4000,
      cheques: 0,
    }),
  ],
  [
    'settle market out 10 honey back 3 honey damaged 1 honey 65 cash',
    on('2027-04-03', {
      kind: 'stall-close',
      stall: 'quay',
      out: { honey: 10 },
      back: { honey: 3 },
      damaged: { honey: 1 },
      float: 0,
      cash: 6500,
      cards: 0,
      cheques: 0,
    }),
  ],
  ['ada lleva 12 honey y 6 jam', out('ada', { honey: 12, jam: 6 })],
  ['salida a ines de 2 cajas de honey', out('ines', { honey: 24 })],
  ['ben devuelve 2 mint ayer', on('2027-04-07', back('ben', { 'tea-mint': 2 }))],
  ['ada paga 40,50 en efectivo el lunes', on('2027-04-05', paid('ada', 4050))],
  ['pago de ada 40 con tarjeta', paid('ada', 4000, 'card')],
  ['pago ada todo', paid('ada', 2550)],
  ['ada pasa 2 honey a ben', pass('ada', 'ben', { honey: 2 })],
  ['recuento 12 honey 0 jam', { kind: 'count', lines: { honey: 12, jam: 0 } }],
  ['ingreso 120 el 3 de abril', on('2027-04-03', { kind: 'deposit', cents: 12000 })],
  ['ingreso 1.200', { kind: 'deposit', cents: 120000 }],
  ['baja 1 jam: tarro roto', { kind: 'loss', lines: { jam: 1 }, reason: 'tarro roto' }],
  ['intercambio 12 honey de hill', { kind: 'swap-in', neighbour: 'hill', lines: { honey: 12 } }],
  [
    'puesto gate vendido 7 honey efectivo 65',
    on('2027-03-27', {
      kind: 'stall-close',
      stall: 'gate',
      out: { honey: 7 },
      back: {},
      float: 0,
      cash: 6500,
      cards: 0,
      cheques: 0,
    }),
  ],
];

describe('a line that can mean one thing', () => {
  it.each(LINES)('%s', (line, record) => {
    expect(meant(line)).toEqual([record]);
  });
});

describe('a line that can mean two things is asked', () => {
  const ASKED: readonly (readonly [line: string, records: readonly object[]])[] = [
    ['back 2 tea ben', [back('ben', { 'tea-mint': 2 }), back('ben', { 'tea-berry': 2 })]],
    ['pay linden 40', [paid('ben', 4000), paid('lea', 4000)]],
    ['ada 12 honey', [out('ada', { honey: 12 }), back('ada', { honey: 12 })]],
    [
      'swap 12 honey hill',
      [
        { kind: 'swap-in', neighbour: 'hill', lines: { honey: 12 } },
        { kind: 'swap-out', neighbour: 'hill', lines: { honey: 12 } },
      ],
    ],
    [
      'deposit 120 4/3',
      [
        on('2027-03-04', { kind: 'deposit', cents: 12000 }),
        on('2027-04-03', { kind: 'deposit', cents: 12000 }),
      ],
    ],
    [
      'gift 3 honey',
      [
        { kind: 'gift', from: 'stockroom', lines: { honey: 3 } },
        { kind: 'gift', from: 'supplier', lines: { honey: 3 } },
      ],
    ],
  ];
  it.each(ASKED)('%s', (line, records) => {
    const found = meant(line);
    expect(found).toHaveLength(records.length);
    expect(found).toEqual(expect.arrayContaining([...records]));
  });
});

describe('a line that means nothing yet says what is wanted', () => {
  const WANTED: readonly (readonly [line: string, name: string, said: string, wanted: string])[] = [
    ['', 'nothing_written', '', 'a line'],
    ['   ', 'nothing_written', '', 'a line'],
    ['ada', 'verb_missing', '', 'what happened'],
    ['ada out', 'part_missing', '', 'goods and how many'],
    ['ada out 12', 'part_missing', '12', 'which product 12 is of'],
    ['ada out honey', 'part_missing', 'honey', 'how many of honey'],
    ['out 12 honey', 'part_missing', '', 'a seller'],
    ['ada out 0 honey', 'number_does_not_fit', '0 honey', '1 or more'],
    ['ada out 1.5 honey', 'number_does_not_fit', '1.5', 'a whole number'],
    ['ada out 12 6 honey', 'word_does_not_belong', '6', 'one number for each product'],
    ['ada out 12 honey cash', 'word_does_not_belong', 'cash', 'without “cash”'],
    ['pay ada', 'part_missing', '', 'an amount'],
    ['pay ada 40.5555', 'number_does_not_fit', '40.5555', 'an amount'],
    ['pay ada 0', 'number_does_not_fit', '0', 'an amount'],
    ['pay lea all', 'part_missing', '', 'nothing is still to pay'],
    ['pay ada 40 cash card', 'word_does_not_belong', 'card', 'without “card”'],
    ['lost 1 jam', 'part_missing', '', 'a reason'],
    ['stall quay sold 7 honey', 'part_missing', '', 'the money that was counted'],
    ['stall quay 7 honey cash 5', 'part_missing', '', 'sold'],
    ['pass 2 honey from ada', 'part_missing', '', 'two sellers'],
    ['ada out 9007199254740993 honey', 'number_does_not_fit', '9007199254740993', 'whole number'],
    ['ada out 9007199254740991 cases honey', 'number_does_not_fit', 'honey', 'a smaller number'],
  ];
  it.each(WANTED)('%s', (line, name, said, wanted) => {
    const answer = read(line);
    expect(answer.ok).toBe(false);
    if (answer.ok) return;
    expect(answer.refusal[0]).toMatchObject({ name, said });
    expect(answer.refusal[0]?.wanted).toContain(wanted);
  });

  it('names every word it does not know, with the nearest one it knows', () => {
    const answer = read('ada lleba 12 hony zzzzzz');
    expect(answer).toMatchObject({
      ok: false,
      refusal: [
        { name: 'word_not_known', said: 'lleba', nearest: 'lleva' },
        { name: 'word_not_known', said: 'hony', nearest: 'honey' },
        { name: 'word_not_known', said: 'zzzzzz' },
      ],
    });
  });

  it('says once what every name lacks', () => {
    const answer = read('stall garden sold 1 honey');
    expect(answer).toMatchObject({ ok: false, refusal: [{ name: 'part_missing' }] });
    expect(answer.ok ? [] : answer.refusal).toHaveLength(1);
  });

  it('tells two stalls of one shop apart by the day', () => {
    expect(meant('stall garden sold 1 honey cash 8')).toHaveLength(2);
    expect(meant('stall garden sold 1 honey cash 8 4 april')).toMatchObject([
      { stall: 'gate-2', date: '2027-04-04' },
    ]);
  });

  it('asks for more of a name where too many could be meant', () => {
    const many = Array.from({ length: 13 }, (_, at) => ({ id: `kim-${at}`, name: 'Kim' }));
    const answer = read('kim out 1 honey', { names: { ...context().names, seller: many } });
    expect(answer).toMatchObject({ ok: false, refusal: [{ name: 'too_many_meanings' }] });
  });
});

describe('a note', () => {
  it('may be as long as its schema lets it, and no longer', () => {
    expect(TAIL_MAX).toBe(NOTE_MAX);
    expect(read(`pay ada 4: ${'a'.repeat(NOTE_MAX)}`).ok).toBe(true);
    const answer = read(`pay ada 4: ${'a'.repeat(NOTE_MAX + 1)}`);
    expect(answer).toMatchObject({ ok: false, refusal: [{ name: 'too_long' }] });
  });
});

describe('what the book says', () => {
  it('gives a payment the next receipt number unless the line says one, or none', () => {
    const receipt = (line: string) => {
      const answer = read(line, { receipt: 'R-105' });
      const draft: LineDraft | undefined = answer.ok ? answer.value[0] : undefined;
      return draft?.kind === 'payment' ? draft.receipt : 'no payment';
    };
    expect(receipt('pay ada 40')).toBe('R-105');
    expect(receipt('pay ada 40 receipt 9')).toBe('9');
    expect(receipt('pay ada 40 no receipt')).toBe(undefined);
  });

  it('takes the size of a case from the day of the line', () => {
    const caseUnits = (_: string, day: string) => (day < TODAY ? 6 : 12);
    const yesterday = read('ada out 2 cases honey yesterday', { caseUnits });
    expect(yesterday).toMatchObject({ ok: true, value: [{ lines: { honey: 12 } }] });
  });

  it('reads amounts by the currency', () => {
    const yen = read('pay ada 4000', { currency: 'JPY' });
    expect(yen).toMatchObject({ ok: true, value: [{ cents: 4000 }] });
    const dinar = read('pay ada 1.250', { currency: 'BHD' });
    expect(dinar).toMatchObject({ ok: true, value: [{ cents: 1250 }] });
    expect(read('pay ada 40 usd')).toMatchObject({ ok: true, value: [{ cents: 4000 }] });
  });
});
