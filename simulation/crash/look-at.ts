import { canonicalText } from '../../src/base/canonical-text.ts';
import { payment } from '../../src/journal/test-payments.ts';
import { openSqliteStore } from '../../src/storage/sqlite/open-sqlite-store.ts';
import { BOOK } from './appender.ts';

/** What is left of a store after a crash, held against what had been acknowledged. */
export interface Look {
  /** Acknowledged numbers whose record is missing or not word for word what was appended. */
  readonly lost: readonly number[];
  readonly damaged: boolean;
}

export async function lookAt(path: string, acknowledged: readonly number[]): Promise<Look> {
  const opened = await openSqliteStore(path);
  if (!opened.ok) return { lost: acknowledged, damaged: true };
  const store = opened.value;
  const book = await store.open(BOOK);
  const kept = new Map((await book.readSince(0)).map(({ record }) => [record.id, record]));
  await store.close();
  const lost = acknowledged.filter((number) => {
    const record = payment(number);
    const found = kept.get(record.id);
    return found === undefined || canonicalText(found) !== canonicalText(record);
  });
  return { lost, damaged: store.damage.length > 0 };
}
