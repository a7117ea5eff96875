import type { BookCopy, CopyStore } from '../../../src/journal/book-copy.ts';
import type { Journal } from '../../../src/journal/journal.ts';
import { openIndexedDbStore } from '../../../src/storage/indexeddb/open-indexeddb-store.ts';

/**
 * Runs in a page: opens stores in the browser's own database and does what a test asks of them. All
 * goes to and fro as JSON text, which keeps every writing as it is.
 */
export interface DeviceCall {
  readonly store: string;
  readonly on: 'store' | 'journal' | 'copy';
  readonly book?: { readonly group: string; readonly season: string };
  readonly method: string;
  readonly args: readonly unknown[];
}

const stores = new Map<string, Promise<CopyStore>>();

async function askDevice(text: string): Promise<string> {
  const { store: name, on, book, method, args }: DeviceCall = JSON.parse(text);
  const opening = stores.get(name) ?? openIndexedDbStore(name);
  stores.set(name, opening);
  const store = await opening;
  let target: CopyStore | Journal | BookCopy = store;
  if (book !== undefined) {
    target = on === 'copy' ? await store.openCopy(book) : await store.open(book);
  }
  const work: unknown = Reflect.get(target, method);
  if (typeof work !== 'function') throw new Error(`there is no ${method}`);
  const value: unknown = await work.apply(target, args);
  if (method === 'close') stores.delete(name);
  return JSON.stringify({ value: value ?? null });
}

Object.assign(globalThis, { askDevice });
