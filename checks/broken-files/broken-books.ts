import {
  type BrokenFile,
  brokenBytes,
  brokenExtra,
  brokenJson,
  brokenLine,
  brokenRecord,
  brokenText,
  textOf,
} from './broken-file.ts';
import { goodBook, idOf, type Line, lineOf } from './good-book.ts';

/** Files that are no book, lines that are no record, records that do not fit the others. */

const LAST = goodBook.length;
const PAYMENT = lineOf('payment');
const HANDOVER = lineOf('handover');
const DAY = '2027-02-07';
const header = goodBook[0] ?? {};

const withHeader = (name: string, line: unknown, field: string): BrokenFile =>
  brokenText('the header', name, 1, field, ([, ...rest]) => textOf([line, ...rest]));

const headers: BrokenFile[] = [
  brokenText('the header', 'an empty file', 1, '', () => ''),
  brokenText('the header', 'a file with one empty line', 1, 'book', () => '\n'),
  brokenText('the header', 'no header', 1, 'book', ([, ...rest]) => textOf(rest)),
  withHeader('a later version', { ...header, book: 'cratebook/2' }, 'book'),
  withHeader('another kind of file', { ...header, book: 'ledger' }, 'book'),
  withHeader('a version that is a number', { ...header, book: 1 }, 'book'),
  withHeader('no group', { ...header, group: undefined }, 'group'),
  withHeader('a group that is no id', { ...header, group: 'Wrenfield Rowers' }, 'group'),
  withHeader('no season', { ...header, season: undefined }, 'season'),
  withHeader('a season that is a number', { ...header, season: 2027 }, 'season'),
  withHeader('a day where a time is wanted', { ...header, exported: DAY }, 'exported'),
  withHeader('a list', [header], 'book'),
  withHeader('a text', '"cratebook/1"', 'book'),
  withHeader('half a header', '{"book":"cratebook/1",', ''),
  withHeader('a spreadsheet', 'date,seller,product,units', ''),
  withHeader('a page of a web site', '<!doctype html>', ''),
  withHeader('a card number', { ...header, owner: 'pays with 4111 1111 1111 1111' }, 'owner'),
  brokenText('the header', 'the header twice', LAST + 1, 'book', (lines) =>
    textOf([...lines, header]),
  ),
  brokenText('the header', 'the header in the middle', 3, 'book', ([, ...rest]) =>
    textOf([header, rest[0], header, ...rest.slice(1)]),
  ),
];

const inLine = (name: string, change: (text: string) => string, field = ''): BrokenFile =>
  brokenLine('lines that are no record', name, PAYMENT, field, change);

const notRecords: BrokenFile[] = [
  inLine('a brace too few', (text) => text.slice(0, -1)),
  inLine('a brace too many', (text) => `${text}}`),
  inLine('a comma at the end', (text) => text.replace('}', ',}')),
  inLine('a comma missing', (text) => text.replace(',"by"', '"by"')),
  inLine('single quotes', (text) => text.replaceAll('"', "'")),
  inLine('names without quotes', (text) => text.replace('"cents"', 'cents')),
  inLine('a remark behind it', (text) => `${text} // cheque`),
  inLine('two records on a line', (text) => `${text}${text}`),
  inLine('two records with a comma', (text) => `${text},${text}`),
  inLine('a comma behind it', (text) => `${text},`),
  inLine('a number with a plus sign', (text) => text.replace(':3000', ':+3000')),
  inLine('a number with leading zeros', (text) => text.replace(':3000', ':003000')),
  inLine('a number in another base', (text) => text.replace(':3000', ':0xBB8')),
  inLine('NaN', (text) => text.replace(':3000', ':NaN')),
  inLine('Infinity', (text) => text.replace(':3000', ':Infinity')),
  inLine('a currency sign', (text) => text.replace(':3000', ':$30.00')),
  inLine('a decimal comma', (text) => text.replace(':3000', ':30,00')),
  inLine('a tab inside a text', (text) => text.replace('R-1', 'R\t1')),
  inLine('a wrong escape', (text) => text.replace('R-1', 'R\\x1')),
  inLine('a text that does not end', (text) => text.replace('"R-1"', '"R-1')),
  inLine('a list', (text) => `[${text}]`),
  inLine('an empty list', () => '[]'),
  inLine('a number', () => '7'),
  inLine('a text', () => '"payment"'),
  inLine('null', () => 'null'),
  inLine('true', () => 'true'),
  inLine('undefined', () => 'undefined'),
  inLine('an empty object', () => '{}', 'kind'),
  inLine('a comma-separated line', () => '2027-02-06,ada,cheque,30.00'),
];

const kind = (said: unknown): BrokenFile =>
  brokenRecord('kinds', 'payment', { kind: said }, 'kind');
const kinds = [undefined, null, 7, '', 'Payment', 'paymint', 'invoice', 'toString'].map(kind);

const cut: BrokenFile[] = [10, 60, 120].map((length) =>
  brokenText('cut-off files', `after ${length} characters of the last line`, LAST, '', (lines) => {
    const text = textOf(lines).slice(0, -1);
    const last = lines.at(-1)?.length ?? 0;
    return text.slice(0, text.length - last + length);
  }),
);

const twice: BrokenFile[] = [
  brokenExtra(
    'ids and fields twice',
    'an id with other content',
    {
      ...goodBook[HANDOVER - 1],
      lines: { honey: 6 },
    },
    'id',
  ),
  brokenExtra(
    'ids and fields twice',
    'an id with one field more',
    {
      ...goodBook[HANDOVER - 1],
      note: 'once more',
    },
    'id',
  ),
  brokenJson(
    'ids and fields twice',
    'payment',
    '"cents":3000',
    '"cents":3000,"cents":300',
    'cents',
  ),
  brokenJson(
    'ids and fields twice',
    'payment',
    '"cents":3000',
    '"cents":3000,"cents":3000',
    'cents',
  ),
  brokenJson(
    'ids and fields twice',
    'handover',
    '"honey":5',
    '"honey":5,"honey":50',
    'lines.honey',
  ),
  brokenJson(
    'ids and fields twice',
    'handover',
    '"honey":5',
    '"honey":5,"h\\u006fney":5',
    'lines.honey',
  ),
  brokenJson('ids and fields twice', 'payment', '"kind":', '"kind":"payment","kind":', 'kind'),
];

const extra = (name: string, record: Line, field: string): BrokenFile =>
  brokenExtra('names of things that are not there', name, record, field);

const unknown: BrokenFile[] = [
  extra(
    'a product',
    { kind: 'handover', date: DAY, seller: 'ada', lines: { tea: 1 } },
    'lines.tea',
  ),
  extra('a seller', { kind: 'handover', date: DAY, seller: 'zoe', lines: { jam: 1 } }, 'seller'),
  extra('a seller in a payment', { ...payment('zoe') }, 'seller'),
  extra('a giver', { kind: 'pass', date: DAY, from: 'zoe', to: 'ben', lines: { jam: 1 } }, 'from'),
  extra('a taker', { kind: 'pass', date: DAY, from: 'ada', to: 'zoe', lines: { jam: 1 } }, 'to'),
  extra(
    'a family',
    { kind: 'seller', seller: 'zoe', name: 'Zoe L.', family: 'lark', active: true },
    'family',
  ),
  extra('a host shop', { ...stall('depot', []) }, 'host'),
  extra(
    'a seller at a stall',
    stall('market', [{ seller: 'zoe', from: '09:00', to: '10:00' }]),
    'shifts.0.seller',
  ),
  extra(
    'a neighbour group',
    { kind: 'swap-in', date: DAY, neighbour: 'vale', lines: { jam: 1 } },
    'neighbour',
  ),
  extra(
    'a stall',
    { ...goodBook[lineOf('stall-close') - 1], id: idOf(LAST + 1), stall: 'pier' },
    'stall',
  ),
  extra(
    'a pool',
    { kind: 'shareout', date: DAY, pool: 'stall:pier', lines: { ada: { jam: 1 } } },
    'pool',
  ),
  extra(
    'a seller in a share-out',
    { kind: 'shareout', date: DAY, pool: 'post', lines: { zoe: { jam: 1 } } },
    'lines.zoe',
  ),
  extra(
    'a product in a share-out',
    { kind: 'shareout', date: DAY, pool: 'post', lines: { ada: { tea: 1 } } },
    'lines.ada.tea',
  ),
  extra('a product on hold', { kind: 'hold', product: 'tea', reason: 'Recall' }, 'product'),
  extra(
    'a product of a lot',
    { kind: 'delivery', date: DAY, lines: { jam: 1 }, lots: [{ product: 'tea', lot: 'L' }] },
    'lots.0.product',
  ),
  extra('a prize step', { kind: 'choice', seller: 'ada', level: 'gold', choice: 'red' }, 'level'),
  extra('a payment', { kind: 'bounced', date: DAY, payment: idOf(999) }, 'payment'),
  extra(
    'a payment that is a handover',
    { kind: 'bounced', date: DAY, payment: idOf(HANDOVER) },
    'payment',
  ),
  extra('a debit', { kind: 'debit-returned', date: DAY, debit: idOf(999) }, 'debit'),
  extra('a record to edit', { ...payment('ada'), replaces: idOf(999) }, 'replaces'),
  extra('a record to remove', { kind: 'void', voids: idOf(999), reason: 'Keyed twice' }, 'voids'),
];

function payment(seller: string): Line {
  return { kind: 'payment', date: DAY, seller, tender: 'cash', cents: 100 };
}

function stall(host: string, shifts: readonly Line[]): Line {
  return {
    kind: 'stall',
    stall: 'pier',
    host,
    starts: `${DAY}T09:00`,
    ends: `${DAY}T10:00`,
    shifts,
  };
}

const claim = (name: string, record: Line, field: string): BrokenFile =>
  brokenExtra('edits and removals that do not fit', name, record, field);

const claims: BrokenFile[] = [
  claim('an edit of itself', { ...payment('ada'), replaces: idOf(LAST + 1) }, 'replaces'),
  claim('a removal of itself', { kind: 'void', voids: idOf(LAST + 1), reason: 'Oops' }, 'voids'),
  claim('an edit of a removal', { ...payment('ada'), replaces: idOf(LAST) }, 'replaces'),
  claim(
    'a payment for a seller',
    { ...payment('ada'), replaces: idOf(lineOf('seller')) },
    'replaces',
  ),
  claim(
    'a product for a host shop',
    { ...goodBook[lineOf('product') - 1], id: idOf(LAST + 1), replaces: idOf(lineOf('host')) },
    'replaces',
  ),
  claim(
    'a removal that also edits',
    { kind: 'void', voids: idOf(PAYMENT), reason: 'Keyed twice', replaces: idOf(PAYMENT) },
    'replaces',
  ),
  brokenText(
    'edits and removals that do not fit',
    'two edits of each other',
    LAST + 1,
    'replaces',
    (lines) => {
      const common = { at: '2027-02-07T18:00:00.000Z', by: 'manager', ...payment('ada') };
      const [a, b] = [idOf(LAST + 1), idOf(LAST + 2)];
      return textOf([
        ...lines,
        { id: a, ...common, replaces: b },
        { id: b, ...common, replaces: a },
      ]);
    },
  ),
  ...['lines', 'seller', 'cents'].map((field) => {
    const loss = { kind: 'loss', date: DAY, reason: 'Lost' };
    const said: Record<string, Line> = {
      lines: loss,
      seller: { ...loss, cents: 5 },
      cents: { ...loss, seller: 'ada' },
    };
    return claim(`a loss without ${field}`, said[field] ?? {}, field);
  }),
  claim(
    'a loss of stock and of a debt',
    { kind: 'loss', date: DAY, reason: 'Lost', lines: { jam: 1 }, seller: 'ada', cents: 5 },
    'seller',
  ),
];

const CARD = '4111 1111 1111 1111';
const withCard = (of: string, change: Line, field: string): BrokenFile => {
  const made = brokenRecord('card numbers', of, change, field);
  return { ...made, name: `in the ${field} of a ${of}` };
};

const cards: BrokenFile[] = [
  withCard('payment', { note: `paid with ${CARD}` }, 'note'),
  withCard('debit', { note: '4111-1111-1111-1111' }, 'note'),
  withCard('refund', { note: 'card 4111111111111111, exp 04/29' }, 'note'),
  withCard('return', { note: '378282246310005' }, 'note'),
  withCard('payment', { receipt: CARD }, 'receipt'),
  withCard('family', { contact: CARD }, 'contact'),
  withCard('family', { name: `Robin ${CARD}` }, 'name'),
  withCard('void', { reason: CARD }, 'reason'),
  withCard('deposit', { slip: CARD }, 'slip'),
  withCard('online', { order: CARD }, 'order'),
  withCard('handover', { by: CARD }, 'by'),
  withCard('delivery', { lots: [{ product: 'honey', lot: CARD }] }, 'lots.0.lot'),
  withCard('count', { counters: ['Sam Hill', CARD] }, 'counters.1'),
  withCard('payment', { card: CARD }, 'card'),
  withCard('swap-in', { card: 4111111111111111 }, 'card'),
  withCard('bank-fee', { more: { deep: [{ card: CARD }] } }, 'more.deep.0.card'),
];

const encodings: BrokenFile[] = [
  brokenBytes('wrong encoding', 'UTF-16, little end first', 1, (good) => [utf16(good, true)]),
  brokenBytes('wrong encoding', 'UTF-16, big end first', 1, (good) => [utf16(good, false)]),
  brokenBytes('wrong encoding', 'UTF-16 without a mark', 1, (good) => [utf16(good, true).slice(2)]),
  brokenBytes('wrong encoding', 'Latin-1', lineOf('family'), (good) => [
    spliced(good, 'Robin', Uint8Array.of(0x52, 0xf3, 0x62, 0x69, 0x6e)),
  ]),
  brokenBytes('wrong encoding', 'a byte that UTF-8 never has', PAYMENT, (good) => [
    spliced(good, 'R-1', Uint8Array.of(0x52, 0xff, 0x31)),
  ]),
  brokenBytes('wrong encoding', 'an overlong letter', PAYMENT, (good) => [
    spliced(good, 'R-1', Uint8Array.of(0x52, 0xc1, 0x81)),
  ]),
  brokenBytes('wrong encoding', 'half a pair of UTF-16', PAYMENT, (good) => [
    spliced(good, 'R-1', Uint8Array.of(0xed, 0xa0, 0x80)),
  ]),
  brokenBytes('wrong encoding', 'a NUL byte', PAYMENT, (good) => [
    spliced(good, 'R-1', Uint8Array.of(0x52, 0, 0x31)),
  ]),
  brokenBytes('wrong encoding', 'a compressed file', 1, () => [
    Uint8Array.of(0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 3, 0x4b, 0x4c, 0x4a, 6, 0),
  ]),
  brokenBytes('wrong encoding', 'cut inside a letter', LAST, (good) => [
    new Uint8Array([...good.slice(0, -10), 0xc3]),
  ]),
  brokenJson('wrong encoding', 'payment', 'R-1', 'R\\u00001', 'receipt'),
  brokenJson('wrong encoding', 'payment', 'R-1', 'R\\ud8001', 'receipt'),
];

function utf16(good: Uint8Array, littleEnd: boolean): Uint8Array {
  const text = `\uFEFF${new TextDecoder().decode(good)}`;
  const bytes = new DataView(new ArrayBuffer(text.length * 2));
  for (let at = 0; at < text.length; at += 1)
    bytes.setUint16(at * 2, text.charCodeAt(at), littleEnd);
  return new Uint8Array(bytes.buffer);
}

function spliced(good: Uint8Array, text: string, bytes: Uint8Array): Uint8Array {
  const at = new TextDecoder('latin1').decode(good).indexOf(text);
  return new Uint8Array([...good.slice(0, at), ...bytes, ...good.slice(at + text.length)]);
}

const MEGABYTE = 1024 * 1024;

const sizes: BrokenFile[] = [
  brokenText('size', 'a line of 2 MB', PAYMENT, '', (lines) =>
    textOf(lines.with(PAYMENT - 1, JSON.stringify({ note: 'x'.repeat(2 * MEGABYTE) }))),
  ),
  brokenBytes('size', 'a line of 100 MB', LAST + 1, function* (good) {
    yield good;
    const piece = new Uint8Array(MEGABYTE).fill(0x78);
    for (let count = 0; count < 100; count += 1) yield piece;
    yield new TextEncoder().encode('\n');
  }),
  brokenText('size', '100,000 lists inside each other', PAYMENT, '', (lines) =>
    textOf(lines.with(PAYMENT - 1, '['.repeat(100_000) + ']'.repeat(100_000))),
  ),
  brokenJson(
    'size',
    'payment',
    '"cents"',
    `"more":${'{"a":'.repeat(50)}1${'}'.repeat(50)},"cents"`,
    `more${'.a'.repeat(16)}`,
  ),
  brokenRecord('size', 'payment', { cents: Number.MAX_SAFE_INTEGER }, 'cents'),
  brokenRecord('size', 'handover', { lines: { honey: Number.MAX_SAFE_INTEGER } }, 'lines.honey'),
];

const reserved: BrokenFile[] = [
  brokenJson(
    'reserved names',
    'payment',
    '"cents"',
    '"__proto__":{"cents":1},"cents"',
    '__proto__',
  ),
  brokenJson('reserved names', 'handover', '"honey":5', '"__proto__":5', 'lines.__proto__'),
  brokenJson('reserved names', 'handover', '"honey":5', '"constructor":5', 'lines.constructor'),
  brokenJson(
    'reserved names',
    'payment',
    '"cents"',
    '"more":{"__proto__":1},"cents"',
    'more.__proto__',
  ),
];

export const brokenBooks: readonly BrokenFile[] = [
  ...headers,
  ...notRecords,
  ...kinds,
  ...cut,
  ...twice,
  ...unknown,
  ...claims,
  ...cards,
  ...encodings,
  ...sizes,
  ...reserved,
];
