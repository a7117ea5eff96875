import { availableParallelism, loadavg } from 'node:os';
import { isDeepStrictEqual } from 'node:util';
import { launchedBrowser } from '../checks/browser/harness.ts';
import { makeSeason } from '../simulation/season-maker.ts';
import { Ledger } from '../src/ledger/ledger.ts';
import type { timeFolds } from './browser-fold-page.ts';
import { bundledPage } from './bundled-page.ts';
import { median } from './median.ts';

/**
 * How long the browser takes to fold one group's book: 5,000 records, in a real Chromium, with the
 * code bundled as the app's is, beside JSON.parse of the same lines in the same page and turn by
 * turn. `node bench/browser-fold.ts [RECORDS]`; goal: 10 ms, the median of the warm runs. The first
 * run, which a person meets when the book opens, is told as well.
 */
const GOAL_MS = 10;
const RUNS = 41;
const WARM_FROM = 5;
const SHAPE = { families: 45, products: 12, days: 63, changesPercent: 5 };

const [asked = '5000'] = process.argv.slice(2);
const size = Number(asked);
const records = makeSeason(1, { ...SHAPE, actsADay: (size / SHAPE.days) * 1.2 }).slice(0, size);
const lines = records.map((record) => JSON.stringify(record));

const browser = await launchedBrowser();
const page = await browser.newPage();
await page.addScriptTag({ content: await bundledPage('browser-fold-page.ts', 'bench') });
const { parse, fold, accounts } = await page.evaluate(
  ({ lines, runs }) => globalThis.bench.timeFolds(lines, runs),
  { lines, runs: RUNS },
);
await browser.close();

if (!isDeepStrictEqual(accounts, Ledger.of(records).balances.toAccounts())) {
  throw new Error('The browser and Node fold the same records to different balances.');
}
const [parseMs, foldMs] = [median(parse.slice(WARM_FROM)), median(fold.slice(WARM_FROM))];
say(`${records.length} records in Chromium ${browser.version()}, median of ${RUNS - WARM_FROM}`);
say(`machine: ${availableParallelism()} cores, load ${(loadavg()[0] ?? 0).toFixed(1)}`);
say(`JSON.parse alone   ${told(parse, parseMs)}`);
say(`fold to balances   ${told(fold, foldMs)}`);
say(`${(foldMs / parseMs).toFixed(2)} times JSON.parse alone`);
say(`goal ${GOAL_MS} ms: ${foldMs <= GOAL_MS ? 'met' : 'missed'}`);
if (foldMs > GOAL_MS) process.exitCode = 1;

/** On a busy machine the fastest run says more than the median. */
function told(times: readonly number[], middle: number): string {
  const [first, fastest] = [times[0] ?? 0, Math.min(...times)];
  return `${middle.toFixed(1)} ms (fastest ${fastest.toFixed(1)}, first ${first.toFixed(1)})`;
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

declare global {
  var bench: { readonly timeFolds: typeof timeFolds };
}
