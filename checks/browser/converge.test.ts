import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { faults } from '../../simulation/convergence/faults.ts';
import { histories } from '../../simulation/convergence/histories.ts';
import { BrowserHistories } from './converge/browser-histories.ts';

/**
 * The histories of simulation/convergence over HTTP and the browser's own database.
 * `node tools/converge-in-browser.ts 200` plays more.
 */
const browser = new BrowserHistories();
beforeAll(() => browser.start());
afterAll(() => browser.end());

const sample = (howMany: number, seed: number) => fc.sample(histories, { numRuns: howMany, seed });

test('phones that were apart end up the same in a real browser', async () => {
  for (const history of sample(4, 11)) expect(await browser.play(history)).toEqual([]);
});

test.each([
  'the outbox is cleared when it is sent, before any answer',
  'two phones give out one series of receipts',
])('it is found when %s', async (fault) => {
  expect(Object.keys(faults)).toContain(fault);
  let found = 0;
  for (const history of sample(12, 3)) {
    found += (await browser.play(history, fault)).length;
    if (found > 0) break;
  }
  expect(found).toBeGreaterThan(0);
});
