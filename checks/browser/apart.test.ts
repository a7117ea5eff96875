import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { allSent, bookKept } from './all-sent.ts';
import {
  Phone,
  StoppableServer,
  saveFee,
  serverFees,
  serverRecords,
  signInAndKeep,
  startDemo,
} from './offline-app.ts';

/** Phones that were apart for a while, and an app that was replaced meanwhile. */
const ends: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

async function started(): Promise<StoppableServer> {
  const server = new StoppableServer();
  ends.push(() => server.end());
  await server.start();
  return server;
}

function newPhone(): Phone {
  const phone = new Phone();
  ends.push(() => phone.end());
  return phone;
}

const heading = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { level: 1, name }).waitFor();

async function editFirstDeposit(page: Page, id: string, amount: string): Promise<void> {
  await page.goto(new URL(`/records/${id}/edit`, page.url()).href);
  await page.getByLabel('Amount').fill(amount);
  await page.getByRole('button', { name: 'Save the edit' }).click();
  await page.getByRole('status').getByText(`$${amount}`).waitFor();
}

test('two phones apart change one record: both come in, and a person chooses', async () => {
  const server = await started();
  const [one, two] = [newPhone(), newPhone()];
  let first = await signInAndKeep(one, server);
  await startDemo(first);
  let second = await signInAndKeep(two, server);
  await heading(second, 'Places');
  await bookKept(second);
  const deposit = (await serverRecords(first)).find((record) => record.kind === 'deposit');
  const before = (await serverRecords(first)).length;
  await server.stop();
  await editFirstDeposit(first, deposit?.id ?? '', '111.00');
  await editFirstDeposit(second, deposit?.id ?? '', '222.00');
  await saveFee(first, '1.11');
  await saveFee(second, '2.22');
  await server.start();
  first = await signInAndKeep(one, server);
  await allSent(first);
  second = await signInAndKeep(two, server);
  await allSent(second);
  await first.evaluate(() => dispatchEvent(new Event('online')));
  expect(await serverRecords(first)).toHaveLength(before + 4);
  for (const page of [first, second]) {
    await page.goto(`${server.origin}/records/${deposit?.id}`);
    await page.getByText('This record was changed twice').waitFor();
  }
  await first.getByRole('button', { name: /^Keep: Deposit at the bank: \$111\.00/ }).click();
  await first.getByText('This record was changed twice').waitFor({ state: 'detached' });
  await allSent(first);
  await second.evaluate(() => dispatchEvent(new Event('online')));
  await second.getByText('This record was changed twice').waitFor({ state: 'detached' });
  for (const page of [first, second]) {
    await page.goto(`${server.origin}/places/bank`);
    await heading(page, /Bank|Places/);
  }
  // What needs attention is worked out once the places are painted.
  const board = (page: Page) => page.locator('main').textContent();
  await expect.poll(async () => (await board(first)) === (await board(second))).toBe(true);
});

test('a newer version waits to be started, and what was not sent yet survives it', async () => {
  const server = await started();
  const phone = newPhone();
  let page = await signInAndKeep(phone, server);
  await startDemo(page);
  await server.stop();
  await saveFee(page, '6.25');
  changeApp(server.appFiles);
  await server.start();
  await page.goto(`${server.origin}/families`);
  await page.getByText('A newer version of Cratebook is ready').waitFor();
  const version = () => page.locator('meta[name="made"]').getAttribute('content');
  expect(await page.locator('meta[name="made"]').count()).toBe(0);
  await page.getByRole('button', { name: 'Start it' }).click();
  await page.locator('meta[name="made"]').waitFor({ state: 'attached' });
  expect(await version()).toBe('later');
  await page.locator('.phone-line').getByText('1 record saved on this phone').waitFor();
  page = await signInAndKeep(phone, server);
  await allSent(page);
  expect(await serverFees(page)).toContain(625);
});

/** Makes a later build of the app: its first page has changed, and the worker knows. */
function changeApp(folder: string): void {
  const page = join(folder, 'index.html');
  writeFileSync(
    page,
    readFileSync(page, 'utf8').replace('<head>', '<head><meta name="made" content="later" />'),
  );
  const worker = join(folder, 'sw.js');
  const before = readFileSync(worker, 'utf8');
  const after = before.replace(/(\/index\.html`?['"]?,revision:[`'"])[0-9a-f]{8}/, '$100000000');
  expect(after).not.toBe(before);
  writeFileSync(worker, after);
  // What was packed is of the version before.
  for (const file of [page, worker]) {
    for (const packed of ['.br', '.gz']) rmSync(file + packed, { force: true });
  }
}
