import { describe, expect, it } from 'vitest';
import { UUID7_PATTERN, uuid7, uuid7Time } from '../../src/base/id.ts';

/**
 * RFC 9562, appendix A.6: the example of a UUID version 7. Tuesday 22 February 2022, 2:22:22 PM
 * GMT−05:00 is 0x017F22E279B0 milliseconds; rand_a is 0xCC3, rand_b 0x18C4DC0C0C07398F.
 */
const EXAMPLE = '017F22E2-79B0-7CC3-98C4-DC0C0C07398F';
const UNIX_MS = 1_645_557_742_000;

describe('the example of RFC 9562', () => {
  it('comes out of its time and random bits', () => {
    const random = Uint8Array.from([0x0c, 0xc3, 0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]);
    expect(uuid7(UNIX_MS, random)).toBe(EXAMPLE.toLowerCase());
  });

  it('whatever stands in the bits of version and variant', () => {
    const random = Uint8Array.from([0xfc, 0xc3, 0xd8, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]);
    expect(uuid7(UNIX_MS, random)).toBe(EXAMPLE.toLowerCase());
  });

  it('fits the pattern of ids in either case, and gives its time back', () => {
    const pattern = new RegExp(`^${UUID7_PATTERN}$`);
    expect(EXAMPLE).toMatch(pattern);
    expect(EXAMPLE.toLowerCase()).toMatch(pattern);
    expect(uuid7Time(EXAMPLE)).toBe(UNIX_MS);
    expect(new Date(UNIX_MS).toISOString()).toBe('2022-02-22T19:22:22.000Z');
  });

  it('other versions and variants do not fit', () => {
    const pattern = new RegExp(`^${UUID7_PATTERN}$`);
    for (const version of ['1', '3', '4', '5', '6', '8']) {
      expect(EXAMPLE.replace('-7CC3', `-${version}CC3`)).not.toMatch(pattern);
    }
    expect(EXAMPLE.replace('-98C4', '-C8C4')).not.toMatch(pattern);
  });
});
