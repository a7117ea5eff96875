import { expect, test } from 'vitest';
import { shortSeason } from '../../scenarios/short/short-season.ts';
import { type By, playSeason } from './season/whole-season.ts';

/**
 * A season from its first question to its closing, every kind of record by its own page, the middle
 * half without a server. `node tools/play-whole-season.ts` does the same with the whole demo.
 */
/** Five hundred steps: more than the usual patience where two cores are busy. */
const PATIENCE = { timeout: 420_000 };
const ways: readonly By[] = ['keyboard', 'taps'];

test.each(ways)('a whole season by %s alone', PATIENCE, async (by) => {
  const played = await playSeason(shortSeason(), by);
  expect(played.have).toEqual(played.should);
  expect(played.complaints).toEqual([]);
  expect(played.onlyHere).toBeGreaterThan(20);
});
