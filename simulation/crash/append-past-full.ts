import { setTimeout } from 'node:timers/promises';
import { payment, taken } from '../../src/journal/test-payments.ts';
import { openSqliteStore } from '../../src/storage/sqlite/open-sqlite-store.ts';
import { BOOK } from './appender.ts';

/**
 * Appends numbered payments until the disk is full, tries again until it is not, appends 50 more
 * and ends. Tells each acknowledged number and the name of each refusal, a line each.
 *
 * node append-past-full.ts PATH
 */
const AFTER_FULL = 50;

const [path = ''] = process.argv.slice(2);
const store = taken(await openSqliteStore(path));
const book = await store.open(BOOK);
let left = Number.POSITIVE_INFINITY;
for (let number = 0; left > 0; ) {
  const outcome = await book.append([payment(number)]);
  if (outcome.ok) {
    console.log(number);
    number += 1;
    left -= 1;
  } else {
    console.log(outcome.refusal.name);
    left = AFTER_FULL;
    await setTimeout(5);
  }
}
await store.close();
