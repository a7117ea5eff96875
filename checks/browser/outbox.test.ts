import { afterEach, expect, test } from 'vitest';
import { allSent } from './all-sent.ts';
import { axeFindings, type OpenedApp, openApp, press, reflowAt320 } from './harness.ts';
import { serverFees } from './offline-app.ts';

/** What cannot be kept or is not taken: said in words, and nothing lost. */
let app: OpenedApp;
afterEach(() => app.close());

const amount = () => app.page.getByLabel('Amount');
const status = () => app.page.getByRole('status');

async function fee(cents: string): Promise<void> {
  await amount().fill(cents);
  await press(app.page, 'Save');
}

/**
 * The browser's store as it is on a full disk: a write fails, by the name that the platform gives
 * (Indexed Database API 3.0), or by the one that Chromium was seen to give on a small disk.
 */
const FULL = ['QuotaExceededError', 'UnknownError'] as const;

async function fillPhone(name: string): Promise<void> {
  await app.page.evaluate((named) => {
    const { add, put } = IDBObjectStore.prototype;
    Object.assign(globalThis, {
      emptyPhone: () => Object.assign(IDBObjectStore.prototype, { add, put }),
    });
    const full = (): never => {
      throw new DOMException('The disk is full.', named);
    };
    Object.assign(IDBObjectStore.prototype, { add: full, put: full });
  }, name);
}

async function makeRoom(): Promise<void> {
  await app.page.evaluate(() => Reflect.apply(Reflect.get(globalThis, 'emptyPhone'), null, []));
}

test.each(FULL)('a full phone (%s) saves to the server, or says what to do', async (name) => {
  app = await openApp({ book: 'demo', path: '/add/bank-fee' });
  await fillPhone(name);
  await fee('1.25');
  await status().getByText('Bank fee: $1.25').waitFor();
  await status().getByText('Saved', { exact: true }).waitFor();
  expect(await serverFees(app.page)).toContain(125);
  await app.page.route('**/records*', (route) => route.abort());
  await fee('2.25');
  await app.page.getByRole('alert').getByText('This phone could not save it').waitFor();
  expect(await amount().inputValue()).toBe('2.25');
  await makeRoom();
  await press(app.page, 'Save');
  await status().getByText('Saved on this phone').waitFor();
  await app.page.unroute('**/records*');
  await app.page.evaluate(() => dispatchEvent(new Event('online')));
  await status().getByText('Saved', { exact: true }).waitFor();
  const fees = await serverFees(app.page);
  expect(fees.filter((cents) => [125, 225].includes(cents))).toEqual([125, 225]);
});

test('what the server refuses later stays with its reason until somebody decides', async () => {
  app = await openApp({ book: 'demo', path: '/add/bank-fee' });
  await app.page.route('**/records*', (route) => route.abort());
  await fee('3.25');
  await status().getByText('Saved on this phone').waitFor();
  await app.page.unroute('**/records*');
  const why = 'The season was closed on another phone; write why this comes late.';
  await app.page.route('**/records', (route) =>
    route.fulfill({
      status: 409,
      contentType: 'application/json',
      body: JSON.stringify({ name: 'late_entry_needs_a_reason', message: why }),
    }),
  );
  await app.page.evaluate(() => dispatchEvent(new Event('online')));
  await app.page.getByRole('link', { name: '1 not taken by the server' }).click();
  await app.page.getByText(why).waitFor();
  await app.page.getByText('Bank fee: $3.25').first().waitFor();
  expect(await axeFindings(app.page)).toEqual([]);
  expect(await reflowAt320(app.page)).toEqual({ overflow: 0, widest: [] });
  expect(await status().textContent()).toContain('Not taken by the server');
  await app.page.reload();
  await app.page.getByText(why).waitFor();
  await app.page.unroute('**/records');
  await press(app.page, 'Send again');
  await app.page.getByText(why).waitFor({ state: 'detached' });
  await allSent(app.page);
  expect((await serverFees(app.page)).filter((cents) => cents === 325)).toEqual([325]);
});
