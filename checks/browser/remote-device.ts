import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import type { CopyStore } from '../../src/journal/book-copy.ts';
import type { Journal } from '../../src/journal/journal.ts';
import type { DeviceCall } from './pages/device-in-page.ts';

/** A device's store in a real browser, used from a test as if it were here. */
const ENTRY = fileURLToPath(new URL('pages/device-in-page.ts', import.meta.url));
const ADDRESS = 'http://device.test/';

/** Opens an empty page of an origin of its own, with the store's code in it. */
export async function devicePage(page: Page): Promise<void> {
  await page.route(`${ADDRESS}**`, (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>Device</title>' }),
  );
  await page.goto(ADDRESS);
  await page.addScriptTag({ content: await deviceCode(), type: 'module' });
  await page.waitForFunction(() => Reflect.has(globalThis, 'askDevice'));
}

let code: Promise<string> | undefined;

function deviceCode(): Promise<string> {
  code ??= bundled();
  return code;
}

async function bundled(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'warn',
    build: { write: false, lib: { entry: ENTRY, formats: ['es'] } },
  });
  const [first] = Array.isArray(built) ? built : [built];
  if (first === undefined || !('output' in first)) throw new Error('nothing was bundled');
  return first.output[0].code;
}

export function remoteStore(page: Page, name: string): CopyStore {
  const ask = async (call: Omit<DeviceCall, 'store'>) => {
    const text = JSON.stringify({ store: name, ...call });
    const answer = await page.evaluate(
      (asked) => (Reflect.get(globalThis, 'askDevice') as (text: string) => string)(asked),
      text,
    );
    return JSON.parse(answer).value;
  };
  const on =
    (target: DeviceCall['on'], book?: DeviceCall['book']) =>
    (method: string) =>
    (...given: unknown[]) => {
      // JSON has no undefined: what is left out at the end stays left out.
      const args = given.slice(0, given.findLastIndex((arg) => arg !== undefined) + 1);
      return ask({ on: target, method, args, ...(book && { book }) });
    };
  const store = on('store');
  const journal = (book: Journal['book']): Journal => {
    const call = on('journal', book);
    return {
      book,
      append: call('append'),
      readSince: call('readSince'),
      lastArrival: call('lastArrival'),
    };
  };
  return {
    damage: [],
    books: store('books'),
    close: store('close'),
    open: async (book) => {
      await store('open')(book);
      return journal(book);
    },
    openCopy: async (book) => {
      await store('openCopy')(book);
      const call = on('copy', book);
      return {
        journal: journal(book),
        state: call('state'),
        keep: call('keep'),
        take: call('take'),
        sent: call('sent'),
        hold: call('hold'),
        putBack: call('putBack'),
      };
    },
  };
}
