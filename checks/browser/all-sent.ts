import type { Page } from 'playwright-core';
import { untilTrue } from './until-true.ts';

/** The name of the app's store in the browser (src/web/this-device.ts). */
const STORE = 'cratebook';

/**
 * Waits until nothing on this device waits to be sent. The app shows a record as soon as the phone
 * has it and sends it afterwards: who looks at the server right after a tap looks too early.
 */
export async function allSent(page: Page): Promise<void> {
  await untilTrue(page, waitsForNothing, STORE);
}

/** Waits until this device keeps the whole book: at a first visit it is drawn before. */
export async function bookKept(page: Page): Promise<void> {
  await untilTrue(page, hasPlace, STORE);
}

async function waitsForNothing(name: string): Promise<boolean> {
  const known = await indexedDB.databases();
  if (!known.some((database) => database.name === name)) return true;
  const asked = <T>(request: IDBRequest<T>): Promise<T> =>
    new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  const db = await asked(indexedDB.open(name));
  const rows: { held?: unknown }[] = await asked(
    db.transaction('outbox').objectStore('outbox').getAll(),
  );
  db.close();
  return rows.every((row) => row.held !== undefined);
}

async function hasPlace(name: string): Promise<boolean> {
  const known = await indexedDB.databases();
  if (!known.some((database) => database.name === name)) return false;
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const db = opening.result;
      const counting = db.transaction('places').objectStore('places').count();
      counting.onerror = () => reject(counting.error);
      counting.onsuccess = () => {
        db.close();
        resolve(counting.result > 0);
      };
    };
  });
}
