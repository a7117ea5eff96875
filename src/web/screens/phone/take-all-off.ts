import { sum } from '../../../base/sum.ts';
import type { CopyStore } from '../../../journal/book-copy.ts';
import { everyStallLine, STALL_STORE } from '../../../storage/indexeddb/stall-log.ts';
import { isTakenOff } from '../../taken-off.ts';

/**
 * Taking the app and its books off a device: what only the device has is counted first, then all
 * that the browser keeps for this address goes. The server is not asked and keeps what it has.
 */

/** Records and stall lines, of every book kept here, that no server has as far as is known. */
export async function onlyHere(copies: CopyStore): Promise<number> {
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
  return records + lines.filter(({ id }) => !handedIn.has(id)).length;
}

/** Databases, kept files, the worker that serves them, and what was typed and chosen here. */
export async function takeOff(copies: CopyStore): Promise<void> {
  isTakenOff.value = true;
  await copies.close();
  const databases = await indexedDB.databases();
  await Promise.all(databases.flatMap(({ name }) => (name === undefined ? [] : dropped(name))));
  const kept = await caches.keys();
  await Promise.all(kept.map((name) => caches.delete(name)));
  const workers = await navigator.serviceWorker.getRegistrations();
  await Promise.all(workers.map((worker) => worker.unregister()));
  localStorage.clear();
  sessionStorage.clear();
}

/** Resolves when the database is gone: other windows of the app close theirs when asked. */
function dropped(name: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const dropping = indexedDB.deleteDatabase(name);
    dropping.onsuccess = () => resolve();
    dropping.onerror = () => reject(dropping.error);
  });
}
