import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PartFacts } from '../../src/intake/quick/part-facts.ts';
import { answerInParts, slowAnswer } from './both-ways.ts';
import { changedLines, claimedLines, seasonLines } from './changed-lines.ts';

/**
 * A large book is read by several threads, each some of its lines. However the lines are shared
 * out, the answer is that of the book read whole. Under the properties stand their teeth.
 */

const encoder = new TextEncoder();
const DAY = '2027-03-01';

const bytesOf = (lines: readonly string[]) => encoder.encode(lines.map((l) => `${l}\n`).join(''));

/** Which part each line goes to, over and over. */
const shares = fc.array(fc.nat(2), { minLength: 1, maxLength: 40 });

function sharedOut([header = '', ...lines]: readonly string[], share: readonly number[]) {
  const parts: string[][] = [[header], [], []];
  for (const [at, line] of lines.entries()) parts[share[at % share.length] ?? 0]?.push(line);
  return parts.map(bytesOf);
}

const NAMES_RECORD = /"(replaces|voids|payment|debit|items)":/;

type Said = (facts: PartFacts) => PartFacts;

/** @param said a fault in what the parts say, where one is sown */
const agrees = (book: fc.Arbitrary<readonly string[]>, said?: Said) =>
  fc.asyncProperty(book, shares, async (lines, share) => {
    const answer = await answerInParts(sharedOut(lines, share), DAY, said);
    if (answer !== 'not sure') expect(answer).toEqual(slowAnswer(bytesOf(lines), DAY));
  });

const seasons = fc.nat(1000).map((seed) => seasonLines(seed, 300));
const changed = changedLines.map(({ lines }) => lines);

async function isCaught(book: fc.Arbitrary<readonly string[]>, said: Said): Promise<boolean> {
  return (await fc.check(agrees(book, said), { numRuns: 200 })).failed;
}

describe('a book in parts', () => {
  it('is answered as the whole book: seasons', async () => {
    await fc.assert(agrees(seasons), { numRuns: 40 });
  });

  it('is answered as the whole book, or slowly: lines written another way, or wrong', async () => {
    await fc.assert(agrees(changed), { numRuns: 600 });
  });

  it('is answered as the whole book: edits and removals that cross parts', async () => {
    await fc.assert(agrees(claimedLines), { numRuns: 300 });
  });

  it('is answered, and not left to the slow way, where the book is fine', async () => {
    for (const [index, lines] of fc.sample(claimedLines, { numRuns: 20, seed: 7 }).entries()) {
      const isFine = slowAnswer(bytesOf(lines), DAY) !== 'refused';
      const answer = await answerInParts(sharedOut(lines, [0, 1, 2]), DAY);
      expect(answer !== 'not sure', `book ${index}`).toBe(isFine);
    }
  });

  it('teeth: a part that keeps its claims to itself is caught', async () => {
    const said: Said = (facts) => ({
      ...facts,
      claims: new Int32Array(),
      claimsWritten: new Float64Array(),
    });
    expect(await isCaught(claimedLines, said)).toBe(true);
  });

  it('teeth: a part that says when another claim was written is caught', async () => {
    const said: Said = (facts) => ({ ...facts, claimsWritten: facts.claimsWritten.map(() => 0) });
    expect(await isCaught(claimedLines, said)).toBe(true);
  });

  it('teeth: a part that keeps its bounces and returned debits to itself is caught', async () => {
    const said: Said = (facts) => ({ ...facts, pointers: new Int32Array() });
    expect(await isCaught(seasons, said)).toBe(true);
  });

  it('teeth: a part that keeps its prices to itself is caught', async () => {
    const said: Said = ({ prices, ...facts }) => ({
      ...facts,
      prices: { ...prices, rows: new Float64Array() },
    });
    expect(await isCaught(seasons, said)).toBe(true);
  });

  it('teeth: parts that do not compare their ids are caught', async () => {
    // Nothing names another record, so that ids matter in no other way.
    const plain = seasons.map((lines) => lines.filter((line) => !NAMES_RECORD.test(line)));
    const differing = plain.map((lines) => {
      const last = lines.at(-1) ?? '';
      return [...lines, last.replace(/"by":"[^"]+"/, '"by":"another"')];
    });
    await fc.assert(agrees(differing), { numRuns: 20 });
    const said: Said = (facts) => ({
      ...facts,
      ids: { words: facts.ids.words.map((word) => word ^ 1), slots: facts.ids.slots },
    });
    expect(await isCaught(differing, said)).toBe(true);
  });
});
