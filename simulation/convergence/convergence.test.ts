import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { faults } from './faults.ts';
import { histories } from './histories.ts';
import { play } from './history.ts';

/**
 * Phones that were apart come together again: nothing lost, nothing doubled, the same balances and
 * the same open choices everywhere. `node tools/converge.ts` plays thousands more.
 */
const converges = fc.asyncProperty(histories, async (history) => {
  expect(await play(history)).toEqual([]);
});

test('two and three phones with wrong clocks, lost answers and kills end up the same', async () => {
  await fc.assert(converges, { numRuns: 300 });
});

describe('a fault in the exchange is found', () => {
  test.each(Object.keys(faults))('%s', async (name) => {
    const faulty = fc.asyncProperty(histories, async (history) => {
      expect(await play(history, faults[name])).toEqual([]);
    });
    const found = await fc.check(faulty, { numRuns: 300, seed: 7, endOnFailure: true });
    expect(found.failed).toBe(true);
  });
});
