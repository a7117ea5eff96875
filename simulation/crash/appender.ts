import { writeSync } from 'node:fs';
import { DatabaseSync } from 'node:sqlite';
import { seeded } from '../../src/base/seeded.ts';
import { payment, taken } from '../../src/journal/test-payments.ts';
import { openSqliteStore } from '../../src/storage/sqlite/open-sqlite-store.ts';

/**
 * The process that is killed or loses power: it appends numbered payments to a store and tells
 * each number on standard output once it has been acknowledged. The record of a number is always
 * the same, so the one who looks afterwards knows what should be there.
 *
 * node appender.ts PATH SEED FAULT [MOST]
 */
export type Fault = 'none' | 'acknowledge-early' | 'synchronous-normal' | 'synchronous-off';

export const BOOK = { group: 'wrenfield', season: 'spring-2027' };

const MOST_TOGETHER = 4;
/** So small that a short run has many checkpoints, where a log is copied into the file. */
const CHECKPOINT_PAGES = 40;

export async function appendNumbered(path: string, seed: number, fault: string, most: number) {
  turnSettings(fault);
  const random = seeded(seed);
  const store = taken(await openSqliteStore(path));
  const book = await store.open(BOOK);
  for (let next = await book.lastArrival(); next < most; ) {
    const together = random.whole(1, MOST_TOGETHER);
    const numbers = Array.from({ length: together }, (_, at) => next + at);
    await Promise.all(
      numbers.map(async (number) => {
        if (fault === 'acknowledge-early') acknowledge(number);
        taken(await book.append([payment(number)]));
        if (fault !== 'acknowledge-early') acknowledge(number);
      }),
    );
    next += together;
  }
}

function acknowledge(number: number): void {
  writeSync(1, `${number}\n`);
}

/** Turned behind the store's back, after it has verified its settings and before it writes. */
function turnSettings(fault: string): void {
  const prepare = DatabaseSync.prototype.prepare;
  DatabaseSync.prototype.prepare = function (this: DatabaseSync, sql: string) {
    if (sql === 'commit') {
      this.exec(`pragma wal_autocheckpoint = ${CHECKPOINT_PAGES}`);
      if (fault === 'synchronous-normal') this.exec('pragma synchronous = normal');
      if (fault === 'synchronous-off') this.exec('pragma synchronous = off');
    }
    return prepare.call(this, sql);
  };
}

if (import.meta.main) {
  const [path = '', seed = '1', fault = 'none', most = '1000000000'] = process.argv.slice(2);
  await appendNumbered(path, Number(seed), fault, Number(most));
  // No closing: the files are left as a process that just ends leaves them.
  process.exit(0);
}
