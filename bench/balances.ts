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
/** A machine that others use too is half as fast again from one minute to the next. */
const ROUNDS = 3;

const home = join(import.meta.dirname, '..');
const folder = mkdtempSync(join(tmpdir(), 'cratebook-bench-'));
const book = join(folder, 'book.jsonl');
const journal = join(folder, 'book.journal');

const [asked = '500000'] = process.argv.slice(2);
const records = writeLargeBook(Number(asked), book, journal);
say(`${records} records, ${mebibytes(book)} of book, ${mebibytes(journal)} of journal`);

const node = process.execPath;
const cratebook = join(home, 'cratebook');
const ownSeconds = () => seconds(cratebook, ['balances', book, '--json']);
const parseSeconds = () => seconds(node, [join(home, 'bench/parse-alone.ts'), book]);
const ledgerSeconds = () => seconds('ledger', ['-f', journal, 'balance', '--flat']);
const rounds = Array.from({ length: ROUNDS }, oneRound);
const hledger = seconds('hledger', ['-f', journal, 'balance', '--flat']);
say(`hledger balance ${hledger.toFixed(2)} s`);
const fastest = (ledger: number) => Math.min(ledger, hledger);
verdict(
  'times faster than the fastest ledger',
  median(rounds.map(({ own, ledger }) => fastest(ledger) / own)),
  GOAL_LEDGER,
  true,
);
verdict(
  'times JSON.parse alone',
  median(rounds.map(({ own, parse }) => own / parse)),
  GOAL_PARSE,
  false,
);
rmSync(folder, { recursive: true });

/** Timings that are compared stand close to each other, so that a busy minute slows all alike. */
function oneRound(): { own: number; parse: number; ledger: number } {
  const before = [ownSeconds(), ownSeconds()];
  const parseBefore = parseSeconds();
  const ledger = ledgerSeconds();
  const parse = median([parseBefore, parseSeconds()]);
  const own = median([...before, ownSeconds(), ownSeconds()]);
  say(
    `cratebook balances ${own.toFixed(2)} s (median of 4), JSON.parse alone ` +
      `${parse.toFixed(2)} s, ledger balance ${ledger.toFixed(2)} s: ` +
      `${(ledger / own).toFixed(1)} times`,
  );
  return { own, parse, ledger };
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
