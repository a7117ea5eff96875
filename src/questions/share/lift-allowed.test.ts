import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import { liftAllowed } from './lift-allowed.ts';

const book = testBook({ honey: 800 }, ['ada']);
const season = { name: 'Spring 2027', currency: 'USD', starts: '2027-02-01', ends: '2027-04-18' };
const version = (lift: boolean, day: string) =>
  book.setting('season', { ...season, sharing: { lift }, at: `${day}T20:00:00.000Z` });
const stall = (starts: string) =>
  book.setting('stall', {
    stall: 'quay',
    host: 'market',
    starts: `${starts}T09:00`,
    ends: `${starts}T12:00`,
    shifts: [],
  });
const asked = (first: string, ...records: Parameters<typeof book.ledger>[0]) =>
  liftAllowed(book.ledger([stall(first), ...records]));

describe('a lift', () => {
  it('is off unless the season says so', () => {
    expect(asked('2027-03-06')).toEqual({ allowed: false, why: 'not_chosen' });
    expect(asked('2027-03-06', version(false, '2027-02-02'))).toMatchObject({ allowed: false });
  });

  it('counts where it was chosen before the first stall’s day', () => {
    const chosen = version(true, '2027-03-05');
    expect(asked('2027-03-06', chosen)).toEqual({
      allowed: true,
      chosen: chosen.id,
      since: '2027-03-05',
    });
    expect(asked('2027-03-05', chosen)).toMatchObject({
      allowed: false,
      why: 'chosen_too_late',
      since: '2027-03-05',
      firstStall: '2027-03-05',
    });
  });

  it('keeps its first day through later edits, and loses it where it was switched off', () => {
    const first = version(true, '2027-02-02');
    const edit = version(true, '2027-03-20');
    expect(asked('2027-03-06', first, edit)).toMatchObject({ allowed: true, chosen: first.id });
    const off = version(false, '2027-03-01');
    expect(asked('2027-03-06', first, off, edit)).toMatchObject({
      allowed: false,
      since: '2027-03-20',
    });
  });

  it('is not made older by a device whose clock runs behind', () => {
    const off = version(false, '2027-03-10');
    const on = { ...version(true, '2027-02-02'), replaces: off.id };
    expect(asked('2027-03-06', off, on)).toMatchObject({ allowed: false, since: '2027-03-10' });
  });
});
