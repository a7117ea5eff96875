import { closeSync, fdatasyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { canonicalText } from '../src/base/canonical-text.ts';
import type { Journal } from '../src/journal/journal.ts';
import { type payment, payments, taken } from '../src/journal/test-payments.ts';
import { openSqliteStore } from '../src/storage/sqlite/open-sqlite-store.ts';
import { median } from './median.ts';

/**
 * Durable appends against the machine itself: one record a commit through the journal, and the same
 * record's text written to the end of a bare file with fdatasync after each, in turns on the same
 * disk in the same run. Goal: at least 0.7 of the bare rate. Told besides: appends that wait
 * together, and one import.
 *
 * node bench/append.ts [FOLDER]    (the folder's disk is what is measured; a RAM disk tells
 * nothing)
 */
const ROUNDS = 200;
const APPENDS_A_ROUND = 20;
const TOGETHER = 50;
const TOGETHER_ROUNDS = 30;
const IMPORT_RECORDS = 500_000;
const GOAL = 0.7;

const folder = mkdtempSync(join(resolve(process.argv[2] ?? '.'), '.bench-append-'));
const store = taken(await openSqliteStore(join(folder, 'store.sqlite')));
const book = await store.open({ group: 'wrenfield', season: 'spring-2027' });
const bare = openSync(join(folder, 'bare'), 'a');

const ours: number[] = [];
const bares: number[] = [];
for (let round = 0; round < ROUNDS; round += 1) {
  const records = payments(APPENDS_A_ROUND, round * APPENDS_A_ROUND);
  const texts = records.map((record) => `${canonicalText(record)}\n`);
  // Which goes first changes, so that neither always meets the disk after the other.
  const appending = async () => ours.push(await rateOf(() => appendEach(book, records)));
  const writing = async () => bares.push(await rateOf(() => writeEach(texts)));
  for (const turn of round % 2 === 0 ? [appending, writing] : [writing, appending]) await turn();
}
const ratios = ours.map((rate, round) => rate / (bares[round] ?? 1));
const together = await togetherRate(ROUNDS * APPENDS_A_ROUND);
const imported = await importRate();
closeSync(bare);
await store.close();
rmSync(folder, { recursive: true });

const ratio = median(ratios);
console.log(
  JSON.stringify({
    appendsASecond: Math.round(median(ours)),
    writeAndSyncASecond: Math.round(median(bares)),
    ratio: Number(ratio.toFixed(2)),
    goal: GOAL,
    appendsASecondWaitingTogether: Math.round(together),
    importedASecond: Math.round(imported),
  }),
);
process.exitCode = ratio >= GOAL ? 0 : 1;

async function appendEach(to: Journal, records: readonly ReturnType<typeof payment>[]) {
  for (const record of records) taken(await to.append([record]));
  return records.length;
}

async function writeEach(texts: readonly string[]) {
  for (const text of texts) {
    writeSync(bare, text);
    fdatasyncSync(bare);
  }
  return texts.length;
}

async function togetherRate(from: number) {
  return rateOf(async () => {
    for (let block = 0; block < TOGETHER_ROUNDS; block += 1) {
      const records = payments(TOGETHER, from + block * TOGETHER);
      await Promise.all(records.map((record) => book.append([record])));
    }
    return TOGETHER_ROUNDS * TOGETHER;
  });
}

async function importRate() {
  const other = await store.open({ group: 'oak', season: 'spring-2027' });
  const records = payments(IMPORT_RECORDS);
  return rateOf(async () => taken(await other.append(records)).added.length);
}

/** Things done a second. */
async function rateOf(work: () => Promise<number>): Promise<number> {
  const started = performance.now();
  const count = await work();
  return (count * 1000) / (performance.now() - started);
}
