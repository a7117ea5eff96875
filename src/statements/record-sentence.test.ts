import { expect, it, test } from 'vitest';
import { demoSeason } from '../../scenarios/demo/demo-season.ts';
import { makeSeason } from '../../simulation/season-maker.ts';
import { Ledger } from '../ledger/ledger.ts';
import { testBook } from '../ledger/test-book.ts';
import { movementKinds, setupKinds } from '../records/record.ts';
import { english } from '../words/english.ts';
import { recordSentence } from './record-sentence.ts';

const book = testBook({ honey: 800, jam: 650, tea: 500, oats: 950 }, ['ada', 'ben']);
const paid = book.movement('payment', {
  seller: 'ada',
  tender: 'cheque',
  cents: 123650,
  receipt: 'R-7',
});

it.each([
  [
    book.movement('handover', { seller: 'ada', lines: { honey: 5, jam: 2 } }),
    'Goods out to ada: 5 honey, 2 jam, $53.00',
  ],
  [
    book.movement('delivery', { lines: { honey: 24, jam: 12, tea: 20, oats: 8 }, slip: 'L-1' }),
    'Delivery: 64 units of 4 products, $446.00, slip L-1',
  ],
  [paid, 'Payment from ada: $1,236.50 by cheque, receipt R-7'],
  [
    book.movement('bounced', { payment: paid.id, fee: 1200, charge: true }),
    'Bounced cheque: Payment from ada: $1,236.50 by cheque, receipt R-7 (1 Feb 2027); ' +
      'fee $12.00, charged to the family',
  ],
  [
    book.movement('bounced', { payment: '0195f3c2-7d1a-7c3e-9a41-1f0c6e2b9d10' }),
    'Bounced cheque: a record that is not here yet',
  ],
  [
    book.movement('online', {
      order: 'O-7',
      lines: {},
      gifts: { jam: 2 },
      paid: 1300,
      sent: 'post',
    }),
    'Online order O-7: 2 jam to give away, $13.00 paid, posted',
  ],
  [
    book.movement('pass', { from: 'ada', to: 'ben', lines: { jam: 1 } }),
    'Pass on from ada to ben: 1 jam, $6.50',
  ],
  [
    book.movement('loss', { seller: 'ben', cents: 500, reason: 'moved away' }),
    'Write-off of $5.00 that ben had still to pay: moved away',
  ],
  [
    book.movement('shareout', { pool: 'stall:quay', lines: { ada: { jam: 2 }, ben: { jam: 3 } } }),
    'Share-out of Market hall, 1 Feb 2027: 5 units to 2 sellers',
  ],
  [
    book.movement('count', {
      lines: {},
      sheet: {
        stall: 'quay',
        entries: [{ id: 'K7M-1', at: '2027-02-01T09:05:00', what: 'sold', lines: { honey: 1 } }],
      },
    }),
    'Stall sheet, Market hall, 1 Feb 2027: 1 line',
  ],
  [book.remove(paid.id), /^Removed: Payment from ada.*\. Reason: keyed twice$/],
])('%#', (record, sentence) => {
  const said = recordSentence(record, book.ledger([paid, record]), english);
  if (typeof sentence === 'string') expect(said).toBe(sentence);
  else expect(said).toMatch(sentence);
});

test('a removal of a removal says that the record stands again', () => {
  const removal = book.remove(paid.id);
  const back = book.remove(removal.id);
  expect(recordSentence(back, book.ledger([paid, removal, back]), english)).toMatch(
    /^Removal taken back: Payment from ada/,
  );
});

test('every record of whole seasons has a sentence without ids, holes or odd values', () => {
  const kinds = new Set<string>();
  for (const records of [demoSeason(), makeSeason(3)]) {
    const ledger = Ledger.of(records);
    for (const record of records) {
      kinds.add(record.kind);
      expect(recordSentence(record, ledger, english)).not.toMatch(
        /undefined|NaN|null|\[object|!|\s$|: $/,
      );
    }
  }
  expect([...movementKinds, ...setupKinds].filter((kind) => !kinds.has(kind))).toEqual([]);
});
