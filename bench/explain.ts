/**
 * How long explain takes on seasons of 500, 5,000 and 50,000 records: one mistake, two and three at
 * once, with everything looked at, and with the stockroom alone. Preparation is included: the book
 * is folded already, as it is in the app. The best of some runs: a busy machine counts less.
 *
 * `node bench/explain.ts [RECORDS…]`; goals at 5,000 records: 60 ms, 150 ms and 3 s, and 60 ms is
 * also held against JSON.parse of the same book, the peer that moves with the machine.
 */

import { observationOf } from '../simulation/mistakes/observe.ts';
import { plants } from '../simulation/mistakes/plant.ts';
import { trueSeason } from '../simulation/mistakes/true-season.ts';
import { seeded } from '../src/base/seeded.ts';
import { Ledger } from '../src/ledger/ledger.ts';
import { explain } from '../src/questions/explain/explain.ts';
import { readObservation } from '../src/questions/explain/observation.ts';
import type { BookRecord } from '../src/records/record.ts';

const SORTS = ['goods out: digits swapped', 'payment: keyed twice', 'delivery: wrong digit'];
const RUNS = 12;
/** Records of a season of size 1. */
const RECORDS_OF_ONE = 195;

const asked = process.argv.slice(2).map(Number);
for (const records of asked.length === 0 ? [500, 5_000, 50_000] : asked) measure(records);

function measure(recordCount: number): void {
  const records = trueSeason(1, Math.max(1, Math.round(recordCount / RECORDS_OF_ONE)));
  const families = records.filter(({ kind }) => kind === 'family').length;
  const truth = Ledger.of(records);
  const text = JSON.stringify(records);
  say(`\n${records.length} records, ${families} families`);
  say(`JSON.parse of the book      ${ms(best(() => JSON.parse(text)))}`);
  let planted: readonly BookRecord[] = records;
  for (const [at, sort] of SORTS.entries()) {
    planted = plants[sort]?.(planted, seeded(40 + at))?.records ?? planted;
    const book = Ledger.of(planted);
    for (const level of ['everything', 'count'] as const) {
      const read = readObservation(book, observationOf(truth, book, level));
      if (!read.ok) throw new Error(read.refusal);
      const observed = read.value;
      const mistakesMax = at === 0 ? 1 : at === 1 ? 2 : 3;
      const time = best(() => explain(book, observed, { mistakesMax }));
      const { explanations } = explain(book, observed, { mistakesMax });
      say(
        `${at + 1} planted, ${level.padEnd(10)}       ${ms(time)}` +
          `   first: ${explanations[0]?.kind ?? 'none'}`,
      );
    }
  }
}

interface Time {
  readonly wall: number;
  /** Processor time, with what compiles and collects beside the main thread. */
  readonly processor: number;
}

function best(run: () => unknown): Time {
  let [wall, processor] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let each = 0; each < RUNS; each += 1) {
    const start = performance.now();
    const before = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(before);
    wall = Math.min(wall, performance.now() - start);
    processor = Math.min(processor, (user + system) / 1000);
  }
  return { wall, processor };
}

function ms({ wall, processor }: Time): string {
  return `${wall.toFixed(1).padStart(9)} ms, processor ${processor.toFixed(1).padStart(7)} ms`;
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}
