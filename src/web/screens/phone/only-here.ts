import { sum } from '../../../base/sum.ts';
import type { CopyStore } from '../../../journal/book-copy.ts';
import {
  everyStallLine,
  STALL_STORE,
  type StallLine,
} from '../../../storage/indexeddb/stall-log.ts';

/** What no server has as far as this device knows, of every book that is kept on it. */
export interface OnlyHere {
  /** How many records. */
  readonly records: number;
  /** Lines of stalls' sheets that are in no record yet. */
  readonly lines: readonly StallLine[];
}

export async function onlyHere(copies: CopyStore): Promise<OnlyHere> {
  const handedIn = new Set<string>();
  let records = 0;
  for (const book of await copies.books()) {
    const copy = await copies.openCopy(book);
    const { outbox } = await copy.state();
    records += sum(outbox.map(({ ids }) => ids.length));
    for (const { record } of await copy.journal.readSince(0)) {
      if (record.kind !== 'count') continue;
      for (const { id } of record.sheet?.entries ?? []) handedIn.add(id);
    }
  }
  const lines = await everyStallLine(STALL_STORE);
  return { records, lines: lines.filter(({ id }) => !handedIn.has(id)) };
}
