import { expect, test } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { findRecords, type RecordSearch, readyTexts, stateOf } from './find-records.ts';

const book = testBook({ honey: 800, jam: 650 }, ['ada', 'ben']);
const delivery = book.movement('delivery', { lines: { honey: 24, jam: 12 }, slip: 'L-104' });
const out = book.movement('handover', { seller: 'ada', lines: { honey: 5 }, date: '2027-02-03' });
const paid = book.movement('payment', {
  seller: 'ada',
  tender: 'cheque',
  cents: 123650,
  date: '2027-02-05',
  note: 'Café money',
});
const pass = book.movement('pass', {
  from: 'ada',
  to: 'ben',
  lines: { jam: 2 },
  date: '2027-02-06',
});
const wrong = book.movement('payment', { seller: 'ben', tender: 'cash', cents: 500 });
const edited = book.movement('payment', {
  seller: 'ben',
  tender: 'cash',
  cents: 600,
  replaces: wrong.id,
});
const doubled = book.movement('deposit', { cents: 700 });
const removal = book.remove(doubled.id);
const all = [delivery, out, paid, pass, wrong, edited, doubled, removal];
const ledger = book.ledger(all);

function found(search: RecordSearch): string[] {
  const movements = new Set(all.map((record) => record.id));
  return findRecords(ledger, search)
    .map(({ record }) => record.id)
    .filter((id) => movements.has(id));
}

test('without a condition: what counts, the latest day first', () => {
  expect(found({})).toEqual([pass.id, paid.id, out.id, edited.id, delivery.id]);
});

test.each<[string, RecordSearch, string[]]>([
  ['kind', { kinds: ['payment'] }, [paid.id, edited.id]],
  ['seller, on either side of a pass', { seller: 'ben' }, [pass.id, edited.id]],
  ['family', { family: 'home', kinds: ['handover'] }, [out.id]],
  ['product', { product: 'jam' }, [pass.id, delivery.id]],
  ['place', { place: 'cashbox' }, [paid.id, edited.id]],
  ['place and seller together', { place: 'cashbox', seller: 'ada' }, [paid.id]],
  ['days, both included', { from: '2027-02-03', to: '2027-02-05' }, [paid.id, out.id]],
  ['text without accents', { text: 'cafe' }, [paid.id]],
  ['an amount with a mark between thousands', { text: '1,236.50' }, [paid.id]],
  ['a slip', { text: 'l-104' }, [delivery.id]],
  ['every word', { text: 'ada honey' }, [out.id]],
  ['nothing fits', { text: 'ada granola' }, []],
])('by %s', (_what, search, ids) => {
  expect(found(search)).toEqual(ids);
});

test('edited and removed records are shown when asked for, with their state', () => {
  const gone = findRecords(ledger, { gone: true, text: '' });
  const states = new Map(gone.map(({ record, state }) => [record.id, state]));
  expect(states.get(wrong.id)).toBe('edited');
  expect(states.get(doubled.id)).toBe('removed');
  expect(states.get(removal.id)).toBe('counts');
  expect(stateOf(ledger, edited)).toBe('counts');
});

test('texts are made ready piece by piece, and anew when a name may have changed', () => {
  const ledger = book.ledger(all);
  const found = () => findRecords(ledger, { text: 'ada' }).length;
  expect(readyTexts(ledger, 3)).toBe(false);
  expect(readyTexts(ledger, 1000)).toBe(true);
  const before = found();
  ledger.add(
    book.setting('seller', { seller: 'ben', name: 'Adan B.', family: 'home', active: true }),
  );
  expect(readyTexts(ledger, 1)).toBe(false);
  expect(found()).toBeGreaterThan(before);
});
