import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { allSent } from './all-sent.ts';
import {
  Phone,
  StoppableServer,
  saveFee,
  serverFees,
  signInAndKeep,
  startDemo,
} from './offline-app.ts';

/** The app without its server: opens, takes records, and sends them when the server is back. */
let server: StoppableServer;
let phone: Phone;
let page: Page;

beforeEach(async () => {
  server = new StoppableServer();
  phone = new Phone();
  await server.start();
  page = await signInAndKeep(phone, server);
  await startDemo(page);
});
afterEach(async () => {
  await phone.end();
  await server.end();
});

const heading = (name: string) => page.getByRole('heading', { level: 1, name }).waitFor();
const phoneLine = () => page.locator('.phone-line');

test('every screen opens without the server, also by its address and after closing', async () => {
  await server.stop();
  await page.goto(`${server.origin}/families/bergstrom`);
  await heading('Bergström');
  await phone.close();
  page = await phone.open(`${server.origin}/stalls`);
  await heading('Stalls');
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('link', { name: 'Closing list' }).click();
  await heading('Closing list');
  await page.goto(`${server.origin}/`);
  await heading('Places');
  expect(await page.getByRole('region', { name: 'Total' }).textContent()).toContain('712 units');
  await phoneLine().getByText('No connection').waitFor();
  const started = await page.evaluate(() => {
    const paint = performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0;
    return Math.round(paint);
  });
  process.stdout.write(`second start without a server: first contentful paint ${started} ms\n`);
});

test('what is written without the server is sent once it is back, once', async () => {
  await server.stop();
  await saveFee(page, '3.50');
  await page.getByRole('status').getByText('Saved on this phone').waitFor();
  await saveFee(page, '4.50');
  await phone.close();
  page = await phone.open(`${server.origin}/phone`);
  await heading('On this phone');
  await page.getByText('Bank fee: $4.50').waitFor();
  await phoneLine().getByText('2 records saved on this phone').waitFor();
  await server.start();
  // The session ended with the server: the copy opens all the same, and says why nothing is sent.
  await page.goto(`${server.origin}/phone`);
  await page.getByText('Open the address that Cratebook printed').waitFor();
  page = await signInAndKeep(phone, server);
  await allSent(page);
  expect((await serverFees(page)).filter((cents) => [350, 450].includes(cents))).toEqual([
    350, 450,
  ]);
});

test('the phone keeps only files of the app and the copy, and never the key', async () => {
  const key = new URL(server.newAddress()).hash.slice('#key='.length);
  // In a window that is open already, this is no new page: it signs in all the same.
  const signedIn = page.waitForResponse((answer) => answer.url().endsWith('/api/session'));
  await page.goto(`${server.origin}/#key=${key}`);
  expect((await signedIn).status()).toBe(200);
  await heading('Places');
  const kept = await page.evaluate(async () => {
    const names: string[] = [];
    for (const cache of await caches.keys()) {
      for (const request of await (await caches.open(cache)).keys()) names.push(request.url);
    }
    return {
      names: names.map((name) => new URL(name).pathname),
      all: JSON.stringify([names, { ...localStorage }, { ...sessionStorage }, location.href]),
      databases: (await indexedDB.databases()).map(({ name }) => name),
    };
  });
  expect(kept.names.length).toBeGreaterThan(40);
  const wanted = /^\/(?:assets\/[\w.-]+\.(?:js|css|svg)|index\.html|manifest\.webmanifest|icons\/)/;
  expect(kept.names.filter((name) => !wanted.test(name))).toEqual([]);
  expect(kept.databases).toEqual(['cratebook']);
  expect(kept.all).not.toContain(key);
});

test('the policy of the server holds for pages that come without it', async () => {
  await server.stop();
  await page.goto(`${server.origin}/families`);
  await heading('Families');
  const told = await page.evaluate(async () => {
    const refusals: string[] = [];
    document.addEventListener('securitypolicyviolation', (event) => {
      refusals.push(event.effectiveDirective);
    });
    const image = new Image();
    image.src = 'https://elsewhere.example/pixel.png';
    document.body.append(image);
    try {
      document.body.innerHTML = '<p>text that became markup</p>';
    } catch {
      refusals.push('markup refused');
    }
    await new Promise((resolve) => setTimeout(resolve, 300));
    return refusals;
  });
  expect(told).toEqual(expect.arrayContaining(['markup refused', 'img-src']));
});
