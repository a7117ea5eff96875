/**
 * Balances of a large book, in one run on one machine: this program on the book file, against the
 * fastest independent plain-text ledger from Debian on the exported journal, and against JSON.parse
 * alone on the same lines. Whole processes are timed, launcher, start and exit included.
 *
 * `node bench/balances.ts [RECORDS]`; goals: at least 10 times faster than the ledgers, and at most
 * 3 times JSON.parse alone.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeLargeBook } from './large-book.ts';
import { median } from './median.ts';

const GOAL_LEDGER = 10;
const GOAL_PARSE = 3;
const RUNS = 5;

const home = join(import.meta.dirname, '..');
const folder = mkdtempSync(join(tmpdir(), 'cratebook-bench-'));
const book = join(folder, 'book.jsonl');
const journal = join(folder, 'book.journal');

const [asked = '500000'] = process.argv.slice(2);
const records = writeLargeBook(Number(asked), book, journal);
say(`${records} records, ${mebibytes(book)} of book, ${mebibytes(journal)} of journal`);

const node = process.execPath;
const cratebook = join(home, 'cratebook');
const [own, parse] = alternating(
  () => seconds(cratebook, ['balances', book, '--json']),
  () => seconds(node, [join(home, 'bench/parse-alone.ts'), book]),
);
say(`cratebook balances  ${own.toFixed(2)} s (median of ${RUNS})`);
say(`JSON.parse alone    ${parse.toFixed(2)} s (median of ${RUNS})`);
const ledger = seconds('ledger', ['-f', journal, 'balance', '--flat']);
say(`ledger balance      ${ledger.toFixed(2)} s`);
const hledger = seconds('hledger', ['-f', journal, 'balance', '--flat']);
say(`hledger balance     ${hledger.toFixed(2)} s`);
verdict('times faster than the fastest ledger', Math.min(ledger, hledger) / own, GOAL_LEDGER, true);
verdict('times JSON.parse alone', own / parse, GOAL_PARSE, false);
rmSync(folder, { recursive: true });

/** Two timings in turns, so that a busy machine slows both alike; the median of each. */
function alternating(one: () => number, other: () => number): [number, number] {
  const times: [number[], number[]] = [[], []];
  for (let run = 0; run < RUNS; run += 1) {
    times[0].push(one());
    times[1].push(other());
  }
  return [median(times[0]), median(times[1])];
}

function seconds(command: string, options: readonly string[]): number {
  const start = performance.now();
  const done = spawnSync(command, options, { maxBuffer: 2 ** 28, encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`${command} ended with ${done.status}: ${done.stderr}`);
  return (performance.now() - start) / 1000;
}

function verdict(what: string, ratio: number, goal: number, isAtLeast: boolean): void {
  const isMet = isAtLeast ? ratio >= goal : ratio <= goal;
  say(
    `${ratio.toFixed(1)} ${what} (goal ${isAtLeast ? '≥' : '≤'} ${goal}: ` +
      `${isMet ? 'met' : 'missed'})`,
  );
  if (!isMet) process.exitCode = 1;
}

function mebibytes(path: string): string {
  return `${(statSync(path).size / 2 ** 20).toFixed(0)} MiB`;
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
