import { type BrokenFile, brokenJson, brokenRecord } from './broken-file.ts';
import type { Line } from './good-book.ts';

/** Values of the wrong type, amounts that cannot be, days that do not exist, ids that are none. */

const WRONG_TYPES = [null, true, '5', [5], { units: 5 }] as const;
const WRONG_AMOUNTS = [-1, 1.5, 9007199254740992, 1e300] as const;

function each(
  group: string,
  kind: string,
  field: string,
  values: readonly unknown[],
  change: (value: unknown) => Line,
): BrokenFile[] {
  return values.map((value) => brokenRecord(group, kind, change(value), field));
}

/** A field of the record itself, one broken file for each value. */
function own(group: string, kind: string, field: string, values: readonly unknown[]) {
  return each(group, kind, field, values, (value) => ({ [field]: value }));
}

const units = (values: readonly unknown[], group: string): BrokenFile[] => [
  ...each(group, 'handover', 'lines.honey', values, (honey) => ({ lines: { honey } })),
  ...each(group, 'delivery', 'lots.0.units', values.slice(0, 2), (count) => ({
    lots: [{ product: 'honey', lot: 'L1', units: count }],
  })),
  ...each(group, 'stall-close', 'out.jam', values.slice(0, 3), (jam) => ({ out: { jam } })),
  ...each(group, 'shareout', 'lines.ada.honey', values.slice(0, 3), (honey) => ({
    lines: { ada: { honey } },
  })),
];

const money = (values: readonly unknown[], group: string): BrokenFile[] => [
  ...own(group, 'payment', 'cents', values),
  ...own(group, 'product', 'price', values.slice(0, 2)),
  ...own(group, 'stall-close', 'float', values.slice(0, 2)),
  ...own(group, 'card-settle', 'fee', values.slice(0, 2)),
  ...own(group, 'online', 'paid', values.slice(0, 2)),
  ...own(group, 'settle', 'proceeds', values.slice(0, 2)),
];

const wrongTypes: BrokenFile[] = [
  ...units(WRONG_TYPES, 'wrong types'),
  ...money(WRONG_TYPES, 'wrong types'),
  ...own('wrong types', 'handover', 'lines', [null, 5, 'honey', ['honey', 5]]),
  ...own('wrong types', 'seller', 'active', ['yes', 1, null]),
  ...own('wrong types', 'level', 'choices', ['red']),
  ...own('wrong types', 'stall', 'shifts', [{}, 'ada 9 to 12']),
  ...each('wrong types', 'stall', 'shifts.0.seller', [7], (seller) => ({
    shifts: [{ seller, from: '09:00', to: '12:00' }],
  })),
  ...own('wrong types', 'family', 'name', [7, ['Robin', 'Wren']]),
  ...own('wrong types', 'payment', 'tender', ['gold', 'Cash', 1]),
  ...own('wrong types', 'online', 'sent', ['pigeon', true]),
  ...own('wrong types', 'gift', 'from', ['shelf']),
  ...own('wrong types', 'proceeds', 'basis', ['median']),
  ...own('wrong types', 'count', 'counters', ['Sam Hill and Jo Reed']),
  ...own('wrong types', 'stall-close', 'counters', [['Sam Hill']]),
  ...own('wrong types', 'deposit', 'items', ['R-1']),
];

const wrongAmounts: BrokenFile[] = [
  ...units([0, ...WRONG_AMOUNTS], 'negative, fractional and huge numbers').filter(
    // A stall may have taken none of a product along.
    ({ field, name }) => field !== 'out.jam' || !name.includes('"jam":0'),
  ),
  ...money(WRONG_AMOUNTS, 'negative, fractional and huge numbers'),
  ...own('negative, fractional and huge numbers', 'product', 'case', [0, -12]),
  ...own('negative, fractional and huge numbers', 'level', 'units', [-10, 0.5]),
  ...each('negative, fractional and huge numbers', 'stall-close', 'tally.500', [-1, 0.5], (n) => ({
    tally: { 500: n },
  })),
  brokenJson('numbers that reading would change', 'payment', ':3000', ':1e400', 'cents'),
  brokenJson('numbers that reading would change', 'payment', ':3000', ':-1e400', 'cents'),
  brokenJson('numbers that reading would change', 'payment', ':3000', ':9007199254740993', 'cents'),
  brokenJson(
    'numbers that reading would change',
    'payment',
    ':3000',
    `:${'9'.repeat(400)}`,
    'cents',
  ),
  brokenJson(
    'numbers that reading would change',
    'payment',
    ':3000',
    ':3000.00000000000000000001',
    'cents',
  ),
  brokenJson(
    'numbers that reading would change',
    'handover',
    '"honey":5',
    '"honey":5.0000000000000000001',
    'lines.honey',
  ),
  brokenJson(
    'numbers that reading would change',
    'handover',
    '"slip":',
    '"weight":1e999,"slip":',
    'weight',
  ),
];

const days: BrokenFile[] = [
  ...own('days and times', 'payment', 'date', [
    undefined,
    '',
    '2027-02-30',
    '2027-02-29',
    '2027-13-01',
    '2027-00-10',
    '2027-2-6',
    '06/02/2027',
    '20270206',
    '2027-02-06T10:00',
    ' 2027-02-06',
    '٢٠٢٧-٠٢-٠٦',
    20270206,
  ]),
  ...own('days and times', 'payment', 'at', [
    undefined,
    '2027-02-06',
    '2027-02-06T18:00:00Z',
    '2027-02-06T18:00:00.000',
    '2027-02-06T18:00:00.000+01:00',
    '2027-02-06T24:00:00.000Z',
    '2027-02-06 18:00:00.000Z',
    1_801_936_800_000,
  ]),
  ...own('days and times', 'stall', 'starts', ['09:00', '2027-02-06T9:00', '2027-02-06T25:00']),
  ...own('days and times', 'season', 'ends', ['in April', null]),
  ...own('days and times', 'product', 'from', ['2027-02-31']),
  ...each('days and times', 'delivery', 'lots.0.bestBefore', ['01/2028'], (bestBefore) => ({
    lots: [{ product: 'honey', lot: 'L1', bestBefore }],
  })),
  ...each('days and times', 'season', 'deadlines.0.date', ['soon'], (date) => ({
    deadlines: [{ deadline: 'choices', name: 'Choices', date }],
  })),
];

const ids: BrokenFile[] = [
  ...own('ids that are none', 'handover', 'id', [
    undefined,
    7,
    '',
    'G-1',
    '0195f3c2-0000-4000-8000-000000000021',
    '0195f3c2000070008000000000000021',
    '{0195f3c2-0000-7000-8000-000000000021}',
  ]),
  ...own('ids that are none', 'handover', 'by', [undefined, '', 7, 'x'.repeat(65)]),
  ...own('ids that are none', 'handover', 'seller', [undefined, '', 'Ada', 'ada w', 'réka', 'a/b']),
  ...own('ids that are none', 'family', 'family', ['x'.repeat(65), 'wren;drop']),
  ...own('ids that are none', 'shareout', 'pool', ['quay', 'stall:', 'stall:The Quay', 'gifts']),
  ...own('ids that are none', 'season', 'currency', ['usd', '$', 'EURO']),
  ...own('ids that are none', 'family', 'language', ['English please!']),
  ...each('ids that are none', 'handover', 'lines.Honey Jar', [5], (count) => ({
    lines: { 'Honey Jar': count },
  })),
  ...each('ids that are none', 'stall-close', 'tally.05', [5], (n) => ({ tally: { '05': n } })),
  ...own('ids that are none', 'void', 'voids', ['the last one', undefined]),
];

const texts: BrokenFile[] = [
  ...own('text too long or missing', 'payment', 'note', ['x'.repeat(501), 5]),
  ...own('text too long or missing', 'void', 'reason', [undefined, '', 'x'.repeat(501)]),
  ...own('text too long or missing', 'host', 'name', [undefined, '', 'x'.repeat(201)]),
  ...own('text too long or missing', 'found', 'reason', [undefined, '']),
];

export const brokenValues: readonly BrokenFile[] = [
  ...wrongTypes,
  ...wrongAmounts,
  ...days,
  ...ids,
  ...texts,
];
