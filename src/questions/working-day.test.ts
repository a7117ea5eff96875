import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { workingDay } from './working-day.ts';

const book = testBook({ honey: 800 }, ['ada']);
const delivery = book.movement('delivery', { lines: { honey: 12 }, date: '2027-03-01' });

describe('the day offered for a new record', () => {
  it('is today in the season and after it', () => {
    expect(workingDay(book.ledger([delivery]), '2027-02-20')).toBe('2027-02-20');
    expect(workingDay(book.ledger([delivery]), '2027-06-01')).toBe('2027-06-01');
  });

  it('is the last recorded day, or the first of the season, before it starts', () => {
    expect(workingDay(book.ledger([delivery]), '2026-11-25')).toBe('2027-03-01');
    expect(workingDay(book.ledger([]), '2026-11-25')).toBe('2027-02-01');
  });

  it('is never before the closing', () => {
    const [season] = book.setup;
    const closing = book.setting('season', {
      name: 'Spring 2027',
      currency: 'USD',
      starts: '2027-02-01',
      ends: '2027-04-18',
      closed: { date: '2027-04-20' },
      ...(season === undefined ? {} : { replaces: season.id }),
    });
    expect(workingDay(book.ledger([closing]), '2027-04-19')).toBe('2027-04-20');
    expect(workingDay(book.ledger([closing]), '2027-04-22')).toBe('2027-04-22');
  });
});
