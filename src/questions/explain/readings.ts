import type { Lines } from '../../records/fields.ts';
import type { LedgerName } from '../postings-of.ts';
import type { Situation } from './situation.ts';

/** An account that a missing record would have moved, and which way. */
export type Touched = readonly [ledger: LedgerName, account: string, sign: 1 | -1];

/**
 * Stands for all stock accounts that nobody looked at, as one: what came from them in all is what
 * the accounts that were looked at have more in all.
 */
export const UNSEEN = '*';

/** Differing products beyond which parts of a difference are not tried one by one. */
const PARTS_MAX = 12;

/**
 * Lines that a missing record may have had, read off the differences of the accounts it would have
 * moved: all that differ the right way, each alone, and all but one.
 */
export function linesFrom(situation: Situation, touched: readonly Touched[]): readonly Lines[] {
  const telling = touched.filter(
    ([ledger, account]) => account === UNSEEN || situation.isOff(ledger, account),
  );
  const key = telling.join(' ');
  const known = situation.readings.get(key);
  if (known !== undefined) return known;
  const read = linesOff(situation, telling);
  situation.readings.set(key, read);
  return read;
}

function linesOff(situation: Situation, touched: readonly Touched[]): Lines[] {
  const found = new Map<string, Lines>();
  const note = (entries: readonly (readonly [string, number])[]): void => {
    if (entries.length > 0) found.set(entries.join(' '), Object.fromEntries(entries));
  };
  for (const [ledger, account, sign] of touched) {
    const off = situation.products
      .map((product) => [product, sign * offAt(situation, ledger, account, product)] as const)
      .filter(([, units]) => units > 0);
    note(off);
    if (off.length > PARTS_MAX) continue;
    for (const line of off) {
      note([line]);
      note(off.filter((each) => each !== line));
    }
  }
  return [...found.values()];
}

function offAt(situation: Situation, ledger: LedgerName, account: string, product: string): number {
  return account === UNSEEN
    ? situation.fromUnseen(product)
    : situation.off(ledger, account, product);
}

/** Minor units that a missing record may have had, read off the money accounts it would move. */
export function centsFrom(
  situation: Situation,
  touched: readonly (readonly [account: string, sign: 1 | -1])[],
): number[] {
  const found = new Set<number>();
  for (const [account, sign] of touched) {
    const minor = sign * situation.off('money', account);
    if (minor > 0) found.add(minor);
  }
  return [...found];
}
