import { BYTE, type LineBytes } from './line-bytes.ts';
import type { Part } from './part.ts';
import type { TapeReader } from './tape.ts';

/** More digits may not fit a number of 32 bits. */
const DIGITS_MAX = 9;

/** A whole number of up to nine digits. */
export class WholePart implements Part {
  readonly isLeftOut = false;
  readonly #least: number;
  readonly #most: number;

  constructor(least: number, most: number) {
    this.#least = least;
    this.#most = most;
  }

  look(line: LineBytes): boolean {
    const whole = passWhole(line);
    if (whole < this.#least || whole > this.#most) return false;
    line.tape.put(whole);
    return true;
  }

  value(from: TapeReader): number {
    return from.next();
  }
}

export class FlagPart implements Part {
  readonly isLeftOut = false;

  look(line: LineBytes): boolean {
    const isTrue = line.has(TRUE);
    if (!isTrue && !line.has(FALSE)) return false;
    line.at += isTrue ? TRUE.length : FALSE.length;
    line.tape.put(isTrue ? 1 : 0);
    return true;
  }

  value(from: TapeReader): boolean {
    return from.next() === 1;
  }
}

/** The whole number that is written here as digits alone, or -1; goes past it. */
export function passWhole(line: LineBytes): number {
  const { bytes, at: start } = line;
  let value = 0;
  let at = start;
  for (; at <= start + DIGITS_MAX; at += 1) {
    const byte = bytes[at] ?? 0;
    if (byte < BYTE.zero || byte > BYTE.nine) break;
    value = value * 10 + byte - BYTE.zero;
  }
  const digits = at - start;
  if (digits === 0 || digits > DIGITS_MAX) return -1;
  // JSON has no zeros in front; a point or an exponent is caught by what must follow a value.
  if (digits > 1 && bytes[start] === BYTE.zero) return -1;
  line.at = at;
  return value;
}

const encoder = new TextEncoder();
const TRUE = encoder.encode('true');
const FALSE = encoder.encode('false');
