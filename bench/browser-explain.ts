import { availableParallelism, loadavg } from 'node:os';
import { isDeepStrictEqual } from 'node:util';
import { launchedBrowser } from '../checks/browser/harness.ts';
import { observationOf } from '../simulation/mistakes/observe.ts';
import { plants } from '../simulation/mistakes/plant.ts';
import { trueSeason } from '../simulation/mistakes/true-season.ts';
import { seeded } from '../src/base/seeded.ts';
import { Ledger } from '../src/ledger/ledger.ts';
import type { BookRecord } from '../src/records/record.ts';
import { type ExplainCase, type ExplainTime, timeExplain } from './browser-explain-page.ts';
import { bundledPage } from './bundled-page.ts';

/**
 * How much longer the browser takes to explain than Node: a season of 5,000 records, one mistake,
 * two and three at once, with everything looked at and with the stockroom alone. The same code,
 * bundled as the app's, in a real Chromium; fastest of some runs on either side, in turn.
 * `node bench/browser-explain.ts [RECORDS]`; goal: within 3 times. The answers must be the same.
 */
const GOAL = 3;
const RUNS = 12;
const RECORDS_OF_ONE = 195;
const SORTS = ['goods out: digits swapped', 'payment: keyed twice', 'delivery: wrong digit'];

const [asked = '5000'] = process.argv.slice(2);
const cases = casesOf(trueSeason(1, Math.max(1, Math.round(Number(asked) / RECORDS_OF_ONE))));
const browser = await launchedBrowser();
const page = await browser.newPage();
await page.addScriptTag({ content: await bundledPage('browser-explain-page.ts', 'explainBench') });
const there = await page.evaluate(
  ({ cases, runs }) => globalThis.explainBench.timeExplain(cases, runs),
  { cases, runs: RUNS },
);
const here = timeExplain(cases, RUNS);
say(`${cases[0]?.records.length} records, Chromium ${browser.version()}, fastest of ${RUNS}`);
say(`machine: ${availableParallelism()} cores, load ${(loadavg()[0] ?? 0).toFixed(1)}`);
await browser.close();
const ratios = here.map((node, at) => ratioOf(node, there[at]));
const worst = Math.max(...ratios);
say(
  `goal within ${GOAL} times: ${worst <= GOAL ? 'met' : 'missed'} (${worst.toFixed(2)} at worst)`,
);
if (worst > GOAL) process.exitCode = 1;

function casesOf(records: readonly BookRecord[]): ExplainCase[] {
  const truth = Ledger.of(records);
  const found: ExplainCase[] = [];
  let planted = records;
  for (const [at, sort] of SORTS.entries()) {
    planted = plants[sort]?.(planted, seeded(40 + at))?.records ?? planted;
    const book = Ledger.of(planted);
    for (const level of ['everything', 'count'] as const) {
      const seen = observationOf(truth, book, level);
      const mistakesMax = at === 0 ? 1 : at === 1 ? 2 : 3;
      const name = `${at + 1} planted, ${level}`;
      found.push({ name, records: planted, seen, mistakesMax });
    }
  }
  return found;
}

function ratioOf(node: ExplainTime, browser: ExplainTime | undefined): number {
  if (browser === undefined || !isDeepStrictEqual(node.kinds, browser.kinds)) {
    throw new Error(`The browser and Node explain otherwise: ${node.name}`);
  }
  const ratio = browser.fastest / node.fastest;
  const [a, b] = [node.fastest, browser.fastest].map((ms) => ms.toFixed(1).padStart(7));
  const first = browser.first.toFixed(0);
  say(
    `${node.name.padEnd(24)} Node ${a} ms, browser ${b} ms (first ${first}), ${ratio.toFixed(2)}`,
  );
  return ratio;
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

declare global {
  var explainBench: { readonly timeExplain: typeof timeExplain };
}
