import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeSeason } from '../../simulation/season-maker.ts';
import { writeBook } from '../../src/intake/write-book.ts';
import { brokenBooks } from '../broken-files/broken-books.ts';
import { textOf } from '../broken-files/broken-file.ts';
import { brokenValues } from '../broken-files/broken-values.ts';
import { goodBook } from '../broken-files/good-book.ts';
import { toldFiles } from '../broken-files/told-files.ts';
import { quickAnswer, slowAnswer } from './both-ways.ts';
import { changedLines } from './changed-lines.ts';

/**
 * Balances are read in two ways: quickly from a look at the bytes, and slowly by way of parsed
 * values. Where the quick way is sure, its answer is the slow way's; where the slow way refuses,
 * the quick way is never sure. Under each property stands its teeth.
 */

const encoder = new TextEncoder();
const DAY = '2027-03-01';

function bookOf(seed: number): Uint8Array {
  const header = { book: 'cratebook/1', group: 'wrenfield', season: 'spring-2027' } as const;
  return encoder.encode([...writeBook(header, makeSeason(seed))].join(''));
}

describe('a book as it is written out', () => {
  it('is answered quickly, and as the slow way does: the demo season', async () => {
    const demo = new URL('../../scenarios/demo/wrenfield-spring-2027.jsonl', import.meta.url);
    const bytes = readFileSync(demo);
    expect(await quickAnswer([bytes], DAY)).toEqual(slowAnswer(bytes, DAY));
  });

  it.each(Array.from({ length: 12 }, (_, seed) => seed))('… and made season %i', async (seed) => {
    const bytes = bookOf(seed);
    expect(await quickAnswer([bytes], DAY)).toEqual(slowAnswer(bytes, DAY));
  });

  it('is answered quickly whatever ids the group chose', async () => {
    const text = new TextDecoder().decode(bookOf(5));
    const bytes = encoder.encode(text.replaceAll('"product-1"', '"constructor"'));
    expect(await quickAnswer([bytes], DAY)).toEqual(slowAnswer(bytes, DAY));
  });

  it('is answered quickly whatever line ends it has', async () => {
    const text = textOf(goodBook);
    for (const other of [text.replaceAll('\n', '\r\n'), text.trimEnd(), `${text}\n\n`]) {
      const bytes = encoder.encode(other);
      expect(await quickAnswer([bytes], DAY)).toEqual(slowAnswer(bytes, DAY));
    }
  });
});

describe('broken and doubtful book files', () => {
  const named = [...brokenValues, ...brokenBooks].map((file) => [file.name, file] as const);

  it.each(named)('%s: the quick way is not sure', async (_name, file) => {
    expect(await quickAnswer([...file.bytes()], DAY)).toBe('not sure');
  });

  it.each(toldFiles.map((file) => [file.name, file] as const))('%s', async (_name, file) => {
    const pieces = [...file.bytes()];
    const quick = await quickAnswer(pieces, DAY);
    if (quick !== 'not sure') expect(quick).toEqual(slowAnswer(Buffer.concat(pieces), DAY));
  });
});

type Way = (lines: readonly string[]) => Promise<unknown>;

const bytesOf = (lines: readonly string[]) => encoder.encode(lines.join('\n'));
const quickly: Way = (lines) => quickAnswer([bytesOf(lines)], DAY);

/** @param way what is held against the slow way */
const agrees = (way: Way) =>
  fc.asyncProperty(changedLines, async ({ lines }) => {
    const quick = await way(lines);
    if (quick !== 'not sure') expect(quick).toEqual(slowAnswer(bytesOf(lines), DAY));
  });

describe('books whose lines are written another way, or wrong', () => {
  it('are answered as the slow way does, or slowly', async () => {
    await fc.assert(agrees(quickly), { numRuns: 1500 });
  });

  it('teeth: a way that does not see removals is caught', async () => {
    const blind: Way = (lines) => quickly(lines.filter((line) => !line.includes('"void"')));
    expect((await fc.check(agrees(blind), { numRuns: 300 })).failed).toBe(true);
  });

  it('teeth: a way that takes a field twice is caught', async () => {
    const careless: Way = (lines) =>
      quickly(lines.map((line) => line.replace('{"by":"somebody",', '{')));
    expect((await fc.check(agrees(careless), { numRuns: 1500 })).failed).toBe(true);
  });

  it('teeth: a way that lets the first of two equal ids stand is caught', async () => {
    const first: Way = (lines) => {
      const seen = new Set<string | undefined>();
      const id = (line: string) => /"id":"([^"]+)"/.exec(line)?.[1] ?? line;
      return quickly(lines.filter((line) => !seen.has(id(line)) && seen.add(id(line))));
    };
    expect((await fc.check(agrees(first), { numRuns: 1500 })).failed).toBe(true);
  });
});

describe('reading in pieces', () => {
  it('gives the same, wherever the bytes are cut', async () => {
    const bytes = bookOf(3);
    const whole = await quickAnswer([bytes], DAY);
    const cuts = fc.array(fc.nat(bytes.length), { maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(cuts, async (at) => {
        const ends = [...at.sort((a, b) => a - b), bytes.length];
        const pieces = ends.map((end, index) => bytes.slice(ends[index - 1] ?? 0, end));
        expect(await quickAnswer(pieces, DAY)).toEqual(whole);
      }),
      { numRuns: 40 },
    );
  });
});
