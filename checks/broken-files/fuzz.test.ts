import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findingLine } from '../../src/intake/finding.ts';
import { NOT_SURE, quickLength } from '../../src/intake/quick-look.ts';
import { type BookRead, BookReader, readBook } from '../../src/intake/read-book.ts';
import { cleanRecord, readRecord } from '../../src/intake/read-record.ts';
import { writeBook } from '../../src/intake/write-book.ts';
import { acceptBook } from '../../src/rules/accept-book.ts';
import { checkBook } from '../../src/rules/check-book.ts';
import { textOf } from './broken-file.ts';
import { goodBook } from './good-book.ts';

/** Whatever the bytes are, the reader answers: it never throws, and never depends on the pieces. */
const GOOD = new TextEncoder().encode(textOf(goodBook));

/** Bytes put in, taken out or changed, anywhere in the file. */
const change = fc.record({
  at: fc.nat(GOOD.length),
  takes: fc.nat(12),
  puts: fc.oneof(
    fc.uint8Array({ maxLength: 6 }),
    fc
      .constantFrom(
        '"',
        '{',
        '}',
        ',',
        '\n',
        '\r\n',
        '\\',
        '-',
        '1e400',
        '0',
        'null',
        '[',
        '\0',
        'ñ',
      )
      .map((text) => new TextEncoder().encode(text)),
  ),
});
const changes = fc.array(change, { minLength: 1, maxLength: 5 });
type Change = { readonly at: number; readonly takes: number; readonly puts: Uint8Array };

function changed(list: readonly Change[]): Uint8Array {
  let bytes: Uint8Array = GOOD;
  for (const { at, takes, puts } of list) {
    bytes = Uint8Array.from([...bytes.subarray(0, at), ...puts, ...bytes.subarray(at + takes)]);
  }
  return bytes;
}

describe('a book whose bytes were changed anywhere', () => {
  it('is answered with findings of one line each, and never with an exception', () => {
    fc.assert(
      fc.property(changes, (list) => {
        const read = readBook([changed(list)]);
        const accepted = acceptBook(read);
        const told = accepted.ok
          ? checkBook({ ledger: accepted.value.ledger, records: read.records, lines: read.lines })
          : undefined;
        for (const finding of [...read.findings, ...(told?.inOrder() ?? [])]) {
          expect(findingLine(finding, 'f')).toMatch(/^f, line \d+[^\p{Cc}]*$/u);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('is written out and read again as the same records, where it is accepted', () => {
    fc.assert(
      fc.property(changes, (list) => {
        const accepted = acceptBook(readBook([changed(list)]));
        if (!accepted.ok) return;
        const { header, records } = accepted.value;
        const again = readBook([...writeBook(header, records)].join(''));
        expect(again.records).toEqual(records);
        expect(again.header).toEqual(header);
      }),
      { numRuns: 400 },
    );
  });
});

describe('reading in pieces', () => {
  const cuts = fc.array(fc.nat(GOOD.length + 20), { maxLength: 6 });

  const sameInPieces = (read: (pieces: readonly Uint8Array[]) => BookRead) =>
    fc.property(changes, cuts, (list, at) => {
      const bytes = changed(list);
      expect(plain(read(pieces(bytes, at)))).toEqual(plain(readBook([bytes])));
    });

  it('gives the same as reading at once, wherever the bytes are cut', () => {
    fc.assert(sameInPieces(readBook), { numRuns: 300 });
  });

  it('has teeth: a reader that loses a byte between pieces is caught', () => {
    const losing = (parts: readonly Uint8Array[]) => {
      const reader = new BookReader();
      for (const [index, part] of parts.entries()) reader.push(part.subarray(index === 0 ? 0 : 1));
      return reader.end();
    };
    expect(fc.check(sameInPieces(losing), { numRuns: 300 }).failed).toBe(true);
  });
});

function pieces(bytes: Uint8Array, at: readonly number[]): Uint8Array[] {
  const ends = [...at].sort((a, b) => a - b);
  return [...ends, bytes.length].map((end, index) => bytes.slice(ends[index - 1] ?? 0, end));
}

function plain(read: BookRead): unknown {
  return { ...read, places: read.records.map((record) => read.places.placeOf(record.id)) };
}

describe('the quick look', () => {
  const value = fc.oneof(
    fc.jsonValue({ maxDepth: 2 }),
    fc.constantFrom('2027-02-30', '4111 1111 1111 1111', 'a\0b', '\ud800', -1, 1.5, 1e16, {}, [], {
      honey: 0,
    }),
  );
  const names = ['id', 'at', 'by', 'date', 'lines', 'cents', 'note', 'seller', 'more', '__proto__'];
  const edit = fc.tuple(fc.constantFrom(...names), fc.option(value, { nil: undefined }));
  const record = fc
    .tuple(fc.constantFrom(...goodBook.slice(1)), fc.array(edit, { maxLength: 2 }))
    .map(([line, edits]) => JSON.parse(JSON.stringify({ ...line, ...Object.fromEntries(edits) })));

  const letsOnlyGoodPass = (look: (said: unknown) => number) =>
    fc.property(record, (said) => {
      const length = look(said);
      if (length === NOT_SURE) return;
      const schemaFindings = readRecord({ ...said, unknown: 1 }, 1).findings;
      // With an unknown field the record is read closely; that field is then all there is to tell.
      expect(schemaFindings.filter((finding) => finding.field !== 'unknown')).toEqual([]);
      // An escape is longer than what it stands for; the line is then read closely.
      const text = JSON.stringify(said);
      if (!Number.isNaN(length) && !text.includes('\\')) expect(length).toBe(text.length);
    });

  it('lets nothing pass that a close reading has something to tell about', () => {
    const look = (said: unknown) =>
      cleanRecord(said) === undefined ? NOT_SURE : quickLength(said);
    fc.assert(letsOnlyGoodPass(look), { numRuns: 3000 });
  });

  it('has teeth: a look that does not see notes is caught', () => {
    const blind = (said: unknown) =>
      typeof said === 'object' && said !== null && 'note' in said
        ? quickLength({ ...said, note: '' })
        : quickLength(said);
    expect(fc.check(letsOnlyGoodPass(blind), { numRuns: 5000 }).failed).toBe(true);
  });

  it('is sure of most records, or large books would be read slowly', () => {
    const sure = goodBook.slice(1).filter((line) => quickLength(line) !== NOT_SURE);
    expect(sure.length).toBeGreaterThan(goodBook.length * 0.9);
  });
});
