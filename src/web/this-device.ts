import { refused } from '../base/outcome.ts';
import type { CopyStore } from '../journal/book-copy.ts';
import { memoryCopies } from '../journal/memory-copy.ts';
import { openIndexedDbStore } from '../storage/indexeddb/open-indexeddb-store.ts';
import type { Machine, Windows } from './machine.ts';
import { say } from './say.ts';

/** The device that the browser runs on: its clock, its randomness and what it keeps. */
const STORE = 'cratebook';
const SERIES_KEY = 'cratebook.receipt-series';

export async function thisDevice(): Promise<Machine> {
  // It fails where the browser keeps nothing, and on a disk that is full to the brim.
  const store = await openIndexedDbStore(STORE).catch(() => undefined);
  const random = (bytes: number) => crypto.getRandomValues(new Uint8Array(bytes));
  return {
    now: () => Date.now(),
    random,
    today: () => {
      const now = new Date();
      const part = (number: number) => String(number).padStart(2, '0');
      return `${now.getFullYear()}-${part(now.getMonth() + 1)}-${part(now.getDate())}`;
    },
    pause: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
    receiptSeries: receiptSeries(random),
    copies: store ?? copiesThatKeepNothing(),
    keeps: store !== undefined,
    windows: otherWindows(),
  };
}

/** Where the browser lets nothing be kept, a save is only one when the server has it. */
function copiesThatKeepNothing(): CopyStore {
  const copies = memoryCopies();
  const detail = say`This browser keeps nothing for the app.`;
  return {
    ...copies,
    openCopy: async (book) => {
      const copy = await copies.openCopy(book);
      return { ...copy, keep: async () => refused({ name: 'store_is_full', detail }) };
    },
  };
}

/** Characters that are not taken for each other on paper. */
const LETTERS = 'ACDEFHJKLMNPRTUVWXY';
const DIGITS = '34679';

/** This device's own prefix of receipt numbers, like `K7M-`, drawn once. */
function receiptSeries(random: (bytes: number) => Uint8Array): string {
  const kept = localStorage.getItem(SERIES_KEY);
  if (kept !== null) return kept;
  const [first = 0, second = 0, third = 0] = random(3);
  const pick = (from: string, byte: number): string => from.charAt(byte % from.length);
  const series = `${pick(LETTERS, first)}${pick(DIGITS, second)}${pick(LETTERS, third)}-`;
  localStorage.setItem(SERIES_KEY, series);
  return series;
}

function otherWindows(): Windows {
  const channel = new BroadcastChannel('cratebook');
  return {
    tell: () => channel.postMessage('the copy has changed'),
    listen: (heard) => {
      const listener = (): void => heard();
      channel.addEventListener('message', listener);
      return () => channel.removeEventListener('message', listener);
    },
  };
}
