import { hash } from 'node:crypto';
import type { RecordRow } from './rows.ts';

/**
 * Seals and digests: how a store proves that what it reads is what was written. SHA-256 is
 * FIPS 180-4, from the platform.
 */

/** SHA-256 (32 bytes) over the book's name and the record's canonical text. */
export function sealOf(group: string, season: string, text: string): Uint8Array {
  return hash('sha256', `${group}\n${season}\n${text}`, 'buffer');
}

export const EMPTY_DIGEST: Uint8Array = new Uint8Array(32);

/**
 * The digest of a set of seals with one more in it: eight lanes of 32 bits, each the sum of that
 * lane of every seal. A sum does not know order, so two stores with the same records agree.
 */
export function addToDigest(digest: Uint8Array, seal: Uint8Array): Uint8Array {
  const sum = new Uint8Array(32);
  let carry = 0;
  for (let at = 31; at >= 0; at -= 1) {
    if (at % 4 === 3) carry = 0;
    carry += (digest[at] ?? 0) + (seal[at] ?? 0);
    sum[at] = carry & 0xff;
    carry >>= 8;
  }
  return sum;
}

export function sameBytes(a: Uint8Array, b: Uint8Array): boolean {
  return Buffer.compare(a, b) === 0;
}

/** True where a row's content, its id and the book it names are what was sealed. */
export function isSealed(row: RecordRow): boolean {
  return (
    row.text.includes(`"id":${JSON.stringify(row.id)}`) &&
    sameBytes(row.seal, sealOf(row.group, row.season, row.text))
  );
}
