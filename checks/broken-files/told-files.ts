import {
  type BrokenFile,
  brokenBytes,
  brokenExtra,
  brokenLine,
  brokenRecord,
  brokenText,
  textOf,
} from './broken-file.ts';
import { goodBook, idOf, type Line, lineOf } from './good-book.ts';

/** What is told and not refused: nothing is lost by it, but somebody should look. */

const LAST = goodBook.length;
const DAY = '2027-02-07';
const GROUP = 'told, not refused';

const told = (kind: string, change: Line, field: string): BrokenFile =>
  brokenRecord(GROUP, kind, change, field);
const extra = (name: string, record: Line, field: string): BrokenFile =>
  brokenExtra(GROUP, name, record, field);

const pay = { kind: 'payment', date: DAY, seller: 'ada', tender: 'cash', cents: 100 };

export const toldFiles: readonly BrokenFile[] = [
  brokenBytes(GROUP, 'a byte-order mark', 1, (good) => [Uint8Array.of(0xef, 0xbb, 0xbf), good]),
  brokenText(GROUP, 'an empty line between records', 3, '', ([first, second, ...rest]) =>
    textOf([first, second, '', ...rest]),
  ),
  brokenLine(GROUP, 'a header field the book does not know', 1, 'place', (text) =>
    text.replace('{', '{"place":"Wrenfield",'),
  ),
  told('payment', { colour: 'green' }, 'colour'),
  told('payment', { more: { deep: [1.5, null] } }, 'more'),
  told('proceeds', { waiver: { cents: 5, from: '2027-03-01' } }, 'waiver.from'),
  told(
    'stall',
    { shifts: [{ seller: 'ada', from: '09:00', to: '12:00', till: 2 }] },
    'shifts.0.till',
  ),
  told('stall', { ends: '2027-02-06T08:00' }, 'ends'),
  told('handover', { date: '2026-02-06' }, 'date'),
  told('online', { paid: 1400 }, 'paid'),
  told('stall-close', { tally: { 500: 12 } }, 'tally'),
  told('deposit', { items: [idOf(999)] }, 'items.0'),
  extra(
    'a choice that is not offered',
    {
      kind: 'choice',
      seller: 'ada',
      level: 'bronze',
      choice: 'green',
    },
    'choice',
  ),
  extra(
    'a stall that brought back more than it took',
    {
      kind: 'stall-close',
      date: DAY,
      stall: 'quay',
      out: {},
      back: { jam: 1 },
      float: 0,
      cash: 0,
      cards: 0,
      cheques: 0,
    },
    'back.jam',
  ),
  extra(
    'more out than the stockroom holds',
    {
      kind: 'handover',
      date: DAY,
      seller: 'ada',
      lines: { honey: 600 },
    },
    'lines.honey',
  ),
  extra(
    'a receipt that an earlier deposit names',
    { kind: 'deposit', date: DAY, cents: 100, items: [idOf(28)] },
    'items.0',
  ),
  extra('more banked than there was', { kind: 'deposit', date: DAY, cents: 900_000 }, 'cents'),
  extra(
    'more shared out than the pool holds',
    {
      kind: 'shareout',
      date: DAY,
      pool: 'stall:quay',
      lines: { ada: { honey: 1 } },
    },
    'lines',
  ),
  extra(
    'a removed payment that bounced',
    {
      kind: 'bounced',
      date: DAY,
      payment: idOf(42),
    },
    'payment',
  ),
  brokenText(
    GROUP,
    'a removed prize step that a choice names',
    lineOf('choice'),
    'level',
    (lines) =>
      textOf([
        ...lines,
        {
          id: idOf(LAST + 1),
          at: '2027-02-07T18:00:00.000Z',
          by: 'manager',
          kind: 'void',
          voids: idOf(lineOf('level')),
          reason: 'Not this year',
        },
      ]),
  ),
  brokenText(GROUP, 'two edits of one record', LAST + 1, 'replaces', (lines) => {
    const target = { replaces: idOf(lineOf('payment')), seller: 'ada', tender: 'cheque' };
    const edits = [1, 2].map((count) => ({
      ...pay,
      ...target,
      id: idOf(LAST + count),
      at: `2027-02-07T18:0${count}:00.000Z`,
      by: 'manager',
    }));
    return textOf([...lines, ...edits]);
  }),
  brokenText(GROUP, 'no season', 1, 'season', ([header]) => textOf([header])),
];
