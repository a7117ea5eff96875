import { assert } from './assert.ts';

/** Characters of a short id chosen by the group, at most. */
export const ID_TEXT_MAX = 64;

/** UUID version 7 of RFC 9562 section 5.7, in either case. */
export const UUID7_PATTERN =
  '[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-7[0-9a-fA-F]{3}-[89abAB][0-9a-fA-F]{3}-[0-9a-fA-F]{12}';

/**
 * Lays out a UUID version 7: 48 bits of Unix milliseconds, then version, variant and 74 random
 * bits. Clock and randomness come in as arguments, so a seed gives the same ids again.
 *
 * @param unixMs whole milliseconds since 1970, below 2^48
 * @param random ten bytes; the bits under version and variant are not used
 */
export function uuid7(unixMs: number, random: Uint8Array): string {
  assert(Number.isSafeInteger(unixMs) && unixMs >= 0 && unixMs < 2 ** 48, 'a time of 48 bits');
  assert(random.length >= 10, 'ten random bytes');
  const time = unixMs.toString(16).padStart(12, '0');
  const rest = [...random.subarray(0, 10)];
  rest[0] = 0x70 | ((rest[0] ?? 0) & 0x0f);
  rest[2] = 0x80 | ((rest[2] ?? 0) & 0x3f);
  const tail = rest.map((byte) => byte.toString(16).padStart(2, '0')).join('');
  const [a, b, c] = [tail.slice(0, 4), tail.slice(4, 8), tail.slice(8)];
  return `${time.slice(0, 8)}-${time.slice(8)}-${a}-${b}-${c}`;
}

/** The Unix milliseconds that a UUID version 7 carries. */
export function uuid7Time(id: string): number {
  return Number.parseInt(id.slice(0, 8) + id.slice(9, 13), 16);
}
