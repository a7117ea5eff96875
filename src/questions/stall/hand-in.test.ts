import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import type { RecordOf } from '../../records/record.ts';
import type { StallEntry } from '../../records/stall-entry.ts';
import { sheetEntries } from './sheet-entries.ts';
import { stallSheet } from './stall-sheet.ts';
import { anyPhone } from './test-entries.ts';

/**
 * Two phones that hand in again and again (a part, some of it twice after a save that was cut off,
 * never in step), and a desk that only has the book: once all records are everywhere, all three
 * show the same sheet, and every line on it once.
 */
const book = testBook({ honey: 800, jam: 650 }, []);

/** Up to which line a phone had written at each hand-in, and how many lines it sends again. */
const anyHandIns = fc.array(fc.tuple(fc.nat(25), fc.nat(5)), { maxLength: 4 });
const anyDay = fc.record({
  one: anyPhone('K7M'),
  two: anyPhone('P3D'),
  handsOne: anyHandIns,
  handsTwo: anyHandIns,
  order: fc.infiniteStream(fc.nat(1000)),
});

function handIns(
  lines: readonly StallEntry[],
  hands: readonly (readonly [upTo: number, again: number])[],
): RecordOf<'count'>[] {
  let sent = 0;
  return [...hands, [lines.length, 0] as const].flatMap(([upTo, again]) => {
    const from = Math.max(0, sent - again);
    sent = Math.max(sent, Math.min(upTo, lines.length));
    const entries = lines.slice(from, sent);
    return entries.length === 0 ? [] : [handIn(entries)];
  });
}

function handIn(entries: readonly StallEntry[]): RecordOf<'count'> {
  return book.movement('count', { lines: {}, sheet: { stall: 'quay', entries: [...entries] } });
}

type Read = typeof sheetEntries;
type Day = typeof anyDay extends fc.Arbitrary<infer T> ? T : never;

function allAgree({ one, two, handsOne, handsTwo, order }: Day, read: Read): boolean {
  const records = [...handIns(one, handsOne), ...handIns(two, handsTwo)];
  const whole = JSON.stringify(stallSheet([...one, ...two]));
  return [one, two, []].every((here) => {
    const arrived = records
      .map((record) => [order.next().value, record] as const)
      .sort(([a], [b]) => a - b)
      .map(([, record]) => record);
    const { entries, onlyHere } = read(book.ledger(arrived), 'quay', here);
    return onlyHere.length === 0 && JSON.stringify(stallSheet(entries)) === whole;
  });
}

describe('sheets that are handed in', () => {
  it('are the same on both phones and at the desk, whatever came twice or late', () => {
    fc.assert(fc.property(anyDay, (day) => allAgree(day, sheetEntries)));
  });

  it('keep what was not handed in on its phone, and count it there', () => {
    const kept = (lines: readonly StallEntry[], upTo: number): boolean => {
      const ledger = book.ledger(upTo === 0 ? [] : [handIn(lines.slice(0, upTo))]);
      const { entries, onlyHere } = sheetEntries(ledger, 'quay', lines);
      return (
        onlyHere.length === Math.max(0, lines.length - upTo) &&
        stallSheet(entries).soldUnits === stallSheet(lines).soldUnits
      );
    };
    fc.assert(fc.property(anyPhone('K7M'), fc.nat(25), kept));
  });

  it.each<readonly [fault: string, read: Read]>([
    [
      'takes the last hand-in of a phone for all of it',
      (ledger, stall, here) => {
        const last = ledger
          .movements()
          .filter(({ kind }) => kind === 'count')
          .slice(-2);
        return sheetEntries(book.ledger(last), stall, here);
      },
    ],
    [
      'gives what was handed in twice a line of its own',
      (ledger, stall, here) => {
        const { entries, onlyHere } = sheetEntries(ledger, stall, here);
        return {
          entries: entries.map((line, at) => ({ ...line, id: `${line.id}${at}` })),
          onlyHere,
        };
      },
    ],
  ])('would be caught with a reader that %s', (_fault, read) => {
    expect(fc.check(fc.property(anyDay, (day) => allAgree(day, read))).failed).toBe(true);
  });
});
