/**
 * UUIDs of version 7 (RFC 9562, section 5.7) between a file's bytes, four whole numbers of 32 bits
 * and text. Only lower case is read: two ways to write one id would be two ids.
 */

const DASH = 45;
/** Value of a hexadecimal digit by its byte; -1 for all other bytes. */
const DIGITS = new Int8Array(256).fill(-1);
for (let value = 0; value < 16; value += 1) DIGITS[value.toString(16).charCodeAt(0)] = value;

export const UUID_LENGTH = 36;
/** A byte that is no digit, for letters beyond ASCII. */
const NO_DIGIT = 255;

/** Reads the id at a place into four numbers; false where there is none in lower case. */
export function readUuid(bytes: Uint8Array, at: number, into: Int32Array): boolean {
  const dashes =
    bytes[at + 8] === DASH &&
    bytes[at + 13] === DASH &&
    bytes[at + 18] === DASH &&
    bytes[at + 23] === DASH;
  if (!dashes) return false;
  const a = four(bytes, at);
  const b = four(bytes, at + 4);
  const c = four(bytes, at + 9);
  const version = four(bytes, at + 14);
  const variant = four(bytes, at + 19);
  const d = four(bytes, at + 24);
  const e = four(bytes, at + 28);
  const f = four(bytes, at + 32);
  // One digit that is none makes the whole negative.
  if ((a | b | c | version | variant | d | e | f) < 0) return false;
  if (version >> 12 !== 7 || variant >> 14 !== 2) return false;
  into[0] = (a << 16) | b;
  into[1] = (c << 16) | version;
  into[2] = (variant << 16) | d;
  into[3] = (e << 16) | f;
  return true;
}

const TEXT = new Uint8Array(UUID_LENGTH);

/** Reads the id that a text is, as readUuid does. */
export function readUuidText(text: string, into: Int32Array): boolean {
  if (text.length !== UUID_LENGTH) return false;
  for (let at = 0; at < UUID_LENGTH; at += 1) TEXT[at] = Math.min(text.charCodeAt(at), NO_DIGIT);
  return readUuid(TEXT, 0, into);
}

/** The two digits of each byte. */
const PAIRS = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'));

/** The id as text, from its four numbers. */
export function uuidText(a: number, b: number, c: number, d: number): string {
  return `${high(a)}${low(a)}-${high(b)}-${low(b)}-${high(c)}-${low(c)}${high(d)}${low(d)}`;
}

function high(word: number): string {
  return `${PAIRS[word >>> 24]}${PAIRS[(word >>> 16) & 255]}`;
}

function low(word: number): string {
  return `${PAIRS[(word >>> 8) & 255]}${PAIRS[word & 255]}`;
}

/** The number that four digits write; negative where one of them is no digit. */
function four(bytes: Uint8Array, at: number): number {
  return (
    (digit(bytes, at) << 12) |
    (digit(bytes, at + 1) << 8) |
    (digit(bytes, at + 2) << 4) |
    digit(bytes, at + 3)
  );
}

function digit(bytes: Uint8Array, at: number): number {
  return DIGITS[bytes[at] ?? 0] ?? -1;
}
