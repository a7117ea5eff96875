import { describe, expect, it } from 'vitest';
import { english } from '../words/english.ts';
import { clockText, stallTimeText } from './stall-time-text.ts';

describe('when a stall is open', () => {
  it('says the day once, or both where it goes past midnight', () => {
    expect(stallTimeText('2027-03-06T09:00', '2027-03-06T12:30', english)).toBe(
      '6 Mar 2027, 09:00 to 12:30',
    );
    expect(stallTimeText('2027-03-06T22:00', '2027-03-07T01:00', english)).toBe(
      '6 Mar 2027, 22:00 to 7 Mar 2027, 01:00',
    );
  });

  it('takes the clock of a shift with or without its day', () => {
    expect(clockText('2027-03-06T09:00')).toBe('09:00');
    expect(clockText('09:00')).toBe('09:00');
  });
});
