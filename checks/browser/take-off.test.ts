import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFindings, reflowAt320 } from './harness.ts';
import {
  Phone,
  StoppableServer,
  saveFee,
  serverRecords,
  signInAndKeep,
  startDemo,
} from './offline-app.ts';
import { untilTrue } from './until-true.ts';

/** A phone is given back: nothing of the book stays on it, and nothing that only it has is lost. */
const server = new StoppableServer();
const phone = new Phone();
let page: Page;

beforeAll(async () => {
  await server.start();
  page = await signInAndKeep(phone, server);
  await startDemo(page);
});
afterAll(async () => {
  await phone.end();
  await server.end();
});

const takeOff = () => page.getByRole('button', { name: 'Take it off this phone' }).click();

/** What the browser keeps for the app's address. */
const kept = () =>
  page.evaluate(async () => ({
    databases: (await indexedDB.databases()).map(({ name }) => name),
    caches: await caches.keys(),
    workers: (await navigator.serviceWorker.getRegistrations()).length,
    words: localStorage.length + sessionStorage.length,
  }));

test('lines of a stall’s sheet are listed with the way to them, and hold it up', async () => {
  await page.goto(`${server.origin}/stalls/garden-0327/sell`);
  const honey = page.getByRole('button', { name: /^Wildflower honey/ }).first();
  const sold = page.getByRole('status');
  const before = Number(/\d+/.exec((await sold.first().textContent()) ?? '')?.[0] ?? 0);
  await honey.click();
  await sold.getByText(`${before + 1} sold`).waitFor();
  await page.getByText('Saved on this phone', { exact: true }).waitFor();
  await page.goto(`${server.origin}/phone`);
  const lines = page.getByRole('region', { name: 'Lines of stalls’ sheets' });
  await lines.getByText('Sold: 1').waitFor();
  await page.getByText('Nothing waits to be sent.').waitFor();
  await takeOff();
  const held = 'Not taken off: 1 line of a stall’s sheet is only on this phone. Hand it in first.';
  await page.getByRole('alert').getByText(held).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  expect((await reflowAt320(page)).overflow).toBe(0);
  expect((await kept()).databases).toContain('cratebook-stalls');
  await lines.getByRole('link', { name: 'Orchard Road garden shop, 27 Mar 2027' }).click();
  await page.getByRole('button', { name: 'Hand in this phone’s lines' }).click();
  await page.getByText('only on this phone').waitFor({ state: 'detached' });
  await page.goto(`${server.origin}/phone`);
  await page.getByText('Everything written here is saved on the server too.').waitFor();
  expect(await lines.count()).toBe(0);
});

test('what only the phone has holds it up, until its number is written', async () => {
  await server.stop();
  await saveFee(page, '4.25');
  await page.locator('.phone-line').getByText('1 record saved on this phone').click();
  await page.getByRole('heading', { level: 1, name: 'On this phone' }).waitFor();
  await takeOff();
  await page.getByText('Not taken off: 1 record is only on this phone.').waitFor();
  expect(await axeFindings(page)).toEqual([]);
  expect((await reflowAt320(page)).overflow).toBe(0);
  await page.getByLabel('How many records and lines may be lost for good?').fill('2');
  await page.getByRole('button', { name: 'Take it off, and lose them' }).click();
  await page.getByRole('alert').getByText('nothing was taken off').waitFor();
  expect((await kept()).databases).toContain('cratebook');
  await server.start();
});

test('once all is sent, the phone keeps nothing and the server everything', async () => {
  page = await signInAndKeep(phone, server);
  await page.goto(`${server.origin}/phone`);
  const before = (await serverRecords(page)).length;
  expect((await kept()).caches.length).toBeGreaterThan(0);
  await takeOff();
  await page.getByRole('heading', { name: 'The book is off this phone' }).waitFor();
  await expect.poll(kept).toEqual({ databases: [], caches: [], workers: 0, words: 0 });
  await page.getByText('is signed out').waitFor();
  await page.evaluate(() => dispatchEvent(new Event('online')));
  expect((await kept()).databases).toEqual([]);
  // What the browser still has of the session opens the book no more, by itself or asked again.
  await expect(serverRecords(page)).rejects.toThrow('401');
  await page.goto(`${server.origin}/phone`);
  await page.getByRole('heading', { name: 'The book cannot be opened' }).waitFor();
  page = await signInAndKeep(phone, server);
  const after = await serverRecords(page);
  expect(after.some((record) => record.kind === 'bank-fee' && record.cents === 425)).toBe(true);
  expect(after.length).toBeGreaterThanOrEqual(before);
});

test('the number written lets go what cannot be sent any more', async () => {
  await page.goto(`${server.origin}/`);
  await page.getByRole('heading', { level: 1, name: 'Places' }).waitFor();
  const before = (await serverRecords(page)).length;
  await untilTrue(page, async () => (await caches.keys()).length > 0);
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await server.stop();
  await saveFee(page, '9.75');
  await page.locator('.phone-line').getByText('1 record saved on this phone').click();
  await takeOff();
  await page.getByLabel('How many records and lines may be lost for good?').fill('1');
  await page.getByRole('button', { name: 'Take it off, and lose them' }).click();
  await page.getByRole('heading', { name: 'The book is off this phone' }).waitFor();
  await page.getByText('the server was not reached to sign it out').waitFor();
  await expect.poll(kept).toEqual({ databases: [], caches: [], workers: 0, words: 0 });
  await server.start();
  page = await signInAndKeep(phone, server);
  await page.getByRole('heading', { level: 1, name: 'Places' }).waitFor();
  expect(await serverRecords(page)).toHaveLength(before);
});
