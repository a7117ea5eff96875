import type { Book } from '../../book.ts';
import { takenOff } from '../../taken-off.ts';

/**
 * Takes the app and its books off a device: databases, kept files, the worker that serves them, and
 * what was typed and chosen here. What only the device has is counted before (see only-here.ts);
 * the server keeps what it has, and ends the session if it can be reached.
 */
export async function takeOff(book: Book): Promise<void> {
  await book.atRest();
  takenOff.value = (await book.signOut()) ? 'signed-out' : 'signed-in';
  await book.copies.close();
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
