import { DAY_PATTERN } from '../../base/day.ts';
import { ID_TEXT_MAX } from '../../base/id.ts';
import { instantNumber } from '../../base/instant-number.ts';
import { BYTE, type LineBytes } from './line-bytes.ts';
import type { Part } from './part.ts';
import { passUuid, TextPart, WordTest } from './text-parts.ts';

/**
 * What every record has, and where it stands in the line that was looked at last: few records need
 * it as text, so it is made only when asked.
 */
export class RecordMarks {
  /** The record's id as four numbers. */
  readonly id = new Int32Array(4);
  /** The parts of these fields, by their names. */
  readonly parts: ReadonlyMap<string, Part>;
  /** Whether it replaces or voids another record, and which. */
  claims = false;
  readonly claimed = new Int32Array(4);
  /** Whether it names a payment that bounced or a debit that came back, and which. */
  points = false;
  readonly pointedAt = new Int32Array(4);
  readonly #line: LineBytes;
  #writtenAt = 0;

  constructor(line: LineBytes) {
    this.#line = line;
    this.parts = new Map([
      ['id', this.#idPart()],
      ['at', this.#instantPart()],
      ['by', new TextPart(1, ID_TEXT_MAX)],
      ['replaces', namingPart(this.claimed, () => (this.claims = true))],
      ['voids', namingPart(this.claimed, () => (this.claims = true))],
      ['payment', namingPart(this.pointedAt, () => (this.points = true))],
      ['debit', namingPart(this.pointedAt, () => (this.points = true))],
    ]);
  }

  /** Forgets the line before. */
  clear(): void {
    this.claims = false;
    this.points = false;
  }

  /** When the record was written, as its instantNumber. */
  written(): number {
    return instantNumber(this.#line.bytes, this.#writtenAt);
  }

  #idPart(): Part {
    return leftOut((line) => passUuid(line, this.id));
  }

  #instantPart(): Part {
    const expression = new RegExp(`^${DAY_PATTERN}$`);
    const days = new WordTest((text) => expression.test(text));
    return leftOut((line) => {
      this.#writtenAt = line.at + 1;
      return passInstant(line, days);
    });
  }
}

/** Stands in a record for the id of another record that it names. */
const NAMED = 'named';
const INSTANT_LENGTH = '2027-02-01T18:00:00.000Z'.length;
const DAY_LENGTH = 10;
/** What stands after the day: each digit at most as large as here. */
const TIME = 'T29:59:59.999Z';
const TWO = 50;
const THREE = 51;

/** Goes past a time in UTC with milliseconds, in quotes. */
function passInstant(line: LineBytes, days: WordTest): boolean {
  const { bytes, at: start, words } = line;
  const end = start + INSTANT_LENGTH + 1;
  if (bytes[start] !== BYTE.quote || bytes[end] !== BYTE.quote) return false;
  const day = words.takeLength(bytes, start + 1, DAY_LENGTH);
  if (day < 0 || !days.passes(day, words)) return false;
  const time = start + 1 + DAY_LENGTH;
  for (let at = 0; at < TIME.length; at += 1) {
    const byte = bytes[time + at] ?? 0;
    const most = TIME.charCodeAt(at);
    const isDigit = most >= BYTE.zero && most <= BYTE.nine;
    if (isDigit ? byte < BYTE.zero || byte > most : byte !== most) return false;
  }
  // The day has 24 hours.
  if (bytes[time + 1] === TWO && (bytes[time + 2] ?? 0) > THREE) return false;
  line.at = end + 1;
  return true;
}

/** The record that is named is kept beside the tape; on the tape it is only there or not. */
function namingPart(into: Int32Array, onNamed: () => void): Part {
  const look = (line: LineBytes): boolean => {
    onNamed();
    return passUuid(line, into);
  };
  return { isLeftOut: false, look, value: () => NAMED };
}

function leftOut(look: (line: LineBytes) => boolean): Part {
  return { isLeftOut: true, look, value: () => undefined };
}
