import { closeSync, mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { BookPieces, type SharedFile, sharedFile } from './book-pieces.ts';

const folder = mkdtempSync(join(tmpdir(), 'cratebook-pieces-'));
const path = join(folder, 'book.jsonl');
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const text = fc
  .array(
    fc.string({ maxLength: 30 }).map((line) => line.replaceAll('\n', '')),
    { minLength: 1 },
  )
  .chain((lines) => fc.constantFrom(lines.join('\n'), `${lines.join('\n')}\n`))
  .filter((each) => each !== '');

/** Takes the pieces of a file, for the readers in turn as the picks say. */
type Take = (shared: SharedFile, picks: readonly number[]) => string[];

const inTurns: Take = (shared, picks) => {
  const readers = [0, 1, 2].map(() => new BookPieces(shared));
  const taken = [said(readers[0]?.first())];
  for (let turn = 0; ; turn += 1) {
    const lines = readers[picks[turn % picks.length] ?? 0]?.next();
    if (lines === undefined) return taken;
    taken.push(said(lines));
  }
};

const said = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);

/** Every piece is whole lines, and together they are the file. */
const holds = (take: Take) =>
  fc.property(
    text,
    fc.integer({ min: 1, max: 64 }),
    fc.array(fc.nat(2), { minLength: 1, maxLength: 8 }),
    (whole, piece, picks) => {
      writeFileSync(path, whole);
      const file = openSync(path, 'r');
      const size = Buffer.byteLength(whole);
      const taken = take(sharedFile(file, size, piece), picks);
      closeSync(file);
      expect(taken.join('')).toBe(whole);
      for (const lines of taken.slice(0, -1).filter((each) => each !== '')) {
        expect(lines.endsWith('\n') || whole.endsWith(lines)).toBe(true);
      }
    },
  );

describe('a file in pieces', () => {
  it('gives every line once and whole, wherever the pieces are cut and whoever takes them', () => {
    fc.assert(holds(inTurns), { numRuns: 500 });
  });

  it('teeth: pieces that are cut through lines are caught', () => {
    const cut: Take = ({ size, piece, ...shared }, picks) => {
      const whole = inTurns({ ...shared, size, piece: size }, picks).join('');
      const bytes = new TextEncoder().encode(whole);
      return Array.from({ length: Math.ceil(size / piece) }, (_, at) =>
        said(bytes.subarray(at * piece, (at + 1) * piece)),
      );
    };
    expect(fc.check(holds(cut), { numRuns: 100 }).failed).toBe(true);
  });

  it('teeth: a reader that leaves out the line that begins on a cut is caught', () => {
    const careless: Take = (shared, picks) => {
      const [first = '', ...others] = inTurns(shared, picks);
      return [first, ...others.map((lines) => (first.endsWith('\n') ? lines.slice(1) : lines))];
    };
    expect(fc.check(holds(careless), { numRuns: 200 }).failed).toBe(true);
  });

  it('gives nothing more once it was stopped', () => {
    writeFileSync(path, 'one\ntwo\nthree\nfour\n');
    const file = openSync(path, 'r');
    const shared = sharedFile(file, 19, 4);
    const [one, other] = [new BookPieces(shared), new BookPieces(shared)];
    expect(said(one.first())).toBe('one\n');
    expect(said(other.next())).toBe('two\n');
    other.stop();
    expect([one.next(), other.next()]).toEqual([undefined, undefined]);
    expect(one.share).toBe(1);
    closeSync(file);
  });
});
