import { expect, it } from 'vitest';
import { testBook } from '../../../ledger/test-book.ts';
import { Reading, replacing } from './reading.ts';

const book = testBook({}, []);
const season = book.setting('season', {
  name: 'Spring 2027',
  currency: 'USD',
  starts: '2027-02-01',
  ends: '2027-04-18',
  ask: 'Jo Quay',
  note: 'As voted',
  deadlines: [{ deadline: 'orders', name: 'Orders in', date: '2027-02-04' }],
});
const typed = {
  name: 'Spring',
  currency: 'USD',
  starts: '2027-02-01',
  ends: '2027-04-19',
  ask: '',
};

it('an edit keeps what its form does not ask for, and drops what was emptied in it', () => {
  const { name, currency, starts, ends } = typed;
  const reading = new Reading(typed, season);
  const draft = { kind: 'season' as const, name, currency, starts, ends, ...replacing(season) };
  const read = reading.done(draft);
  expect(read.ok && read.value).toEqual([
    { ...draft, note: 'As voted', deadlines: season.deadlines },
  ]);
});

it('a new thing takes nothing over from another', () => {
  const draft = { kind: 'host' as const, host: 'quay', name: 'Quay' };
  const read = new Reading({ name: 'Quay' }).done(draft);
  expect(read.ok && read.value).toEqual([draft]);
});
