import { execFileSync } from 'node:child_process';
import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { payment } from '../../src/journal/test-payments.ts';
import { STALL_STORE } from '../../src/storage/indexeddb/stall-log.ts';
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
import { devicePage, remoteStore } from './remote-device.ts';

/** The browser's processes end at once, as with a dead battery; what was told to be saved stays. */
const ends: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const end of ends.splice(0).reverse()) await end();
});

function newPhone(): Phone {
  const phone = new Phone();
  ends.push(() => phone.end());
  return phone;
}

/** Ends every process of the phone's browser; they are known by the profile made for this test. */
async function kill(phone: Phone): Promise<void> {
  const closed = new Promise((resolve) => phone.context.once('close', resolve));
  const pids = execFileSync('pgrep', ['-f', phone.profile], { encoding: 'utf8' });
  for (const pid of pids.trim().split('\n')) {
    try {
      process.kill(Number(pid), 'SIGKILL');
    } catch {
      // It ended with the one before.
    }
  }
  await closed;
  await phone.close();
}

const BOOK = { group: 'wrenfield', season: 'spring-2027' } as const;
const KILLS = 5;

test('records that the store said it keeps are there after the browser was killed', async () => {
  const phone = newPhone();
  const told: string[] = [];
  let next = 0;
  for (let round = 0; round < KILLS; round += 1) {
    const page = await phone.open('about:blank');
    await devicePage(page);
    const copy = await remoteStore(page, 'kill').openCopy(BOOK);
    const stop = { now: false };
    const writing = (async () => {
      while (!stop.now) {
        const record = payment(next);
        next += 1;
        const kept = await copy.keep([record]).catch(() => undefined);
        if (kept?.ok) told.push(record.id);
      }
    })();
    await page.waitForTimeout(150 + round * 37);
    stop.now = round === 0;
    await kill(phone);
    stop.now = true;
    await writing;
  }
  const page = await phone.open('about:blank');
  await devicePage(page);
  const copy = await remoteStore(page, 'kill').openCopy(BOOK);
  const kept = new Set((await copy.journal.readSince(0)).map(({ record }) => record.id));
  const waiting = new Set((await copy.state()).outbox.flatMap(({ ids }) => ids));
  process.stdout.write(`${told.length} records told to be kept over ${KILLS} kills\n`);
  expect(told.length).toBeGreaterThan(KILLS);
  expect(told.filter((id) => !kept.has(id))).toEqual([]);
  expect(waiting).toEqual(kept);
});

test('a phone killed in the middle of a save has all that it called saved', async () => {
  const server = new StoppableServer();
  ends.push(() => server.end());
  await server.start();
  const phone = newPhone();
  let page: Page = await signInAndKeep(phone, server);
  await startDemo(page);
  await server.stop();
  const told: number[] = [];
  for (const round of [1, 2, 3]) {
    page = await phone.open(`${server.origin}/add/bank-fee`);
    await saveFee(page, `7.0${round}`);
    told.push(700 + round);
    await page.getByLabel('Amount').fill(`8.0${round}`);
    // The last tap may or may not be kept; nobody was told.
    void page
      .getByRole('button', { name: 'Save' })
      .click({ noWaitAfter: true })
      .catch(() => undefined);
    await new Promise((resolve) => setTimeout(resolve, round * 15));
    await kill(phone);
  }
  await server.start();
  page = await signInAndKeep(phone, server);
  await allSent(page);
  const fees = await serverFees(page);
  expect(fees.filter((cents) => told.includes(cents))).toEqual(told);
  expect(new Set(fees).size).toBe(fees.length);
});

const STALL = '/stalls/garden-0327';

test('a phone killed between one-tap sales has each that it showed, and none twice', async () => {
  const server = new StoppableServer();
  ends.push(() => server.end());
  await server.start();
  const phone = newPhone();
  let page = await signInAndKeep(phone, server);
  await startDemo(page);
  await bookKept(page);
  await server.stop();
  let kept: readonly string[] = [];
  for (let round = 0; round < KILLS; round += 1) {
    const before = kept.length;
    page = await phone.open(`${server.origin}${STALL}/sell`);
    await firstProduct(page).getByText(`${before} sold`).waitFor();
    const told = await tapUntilKilled(page, before);
    await expect.poll(() => told.shown, { timeout: 20_000 }).toBeGreaterThan(before + 2);
    await page.waitForTimeout(round * 17);
    await kill(phone);
    kept = await stallLines(await phone.open(`${server.origin}${STALL}/sell`));
    process.stdout.write(`${told.taps} taps, ${told.shown} shown, ${kept.length} kept\n`);
    expect(kept.length).toBeGreaterThanOrEqual(told.shown);
    expect(kept.length).toBeLessThanOrEqual(before + told.taps + UNTOLD);
  }
  await server.start();
  page = await signInAndKeep(phone, server);
  await page.goto(`${server.origin}${STALL}/sheet`);
  await page.getByText(`${kept.length} tapped as sold`).waitFor();
  // Fifty lines are handed in by themselves.
  const left = page.getByRole('button', { name: 'Hand in this phone’s lines' });
  if ((await left.count()) > 0) await left.click();
  await page.getByText('only on this phone').waitFor({ state: 'detached' });
  await allSent(page);
  const handedIn = (await serverRecords(page)).flatMap((record) =>
    record.kind === 'count' ? (record.sheet?.entries ?? []) : [],
  );
  expect(handedIn.map(({ id }) => id).sort()).toEqual(kept.toSorted());
});

const firstProduct = (page: Page) => page.locator('.sell-product').first();

const TAP_EVERY_MS = 20;
/** Taps that the page may have done without the word of it coming through before the end. */
const UNTOLD = 2;

/** Sells one product by quick taps until the browser ends, and tells taps and what was shown. */
async function tapUntilKilled(page: Page, before: number) {
  const told = { taps: 0, shown: before };
  await page.exposeFunction('tell', (taps: number, shown: number) => {
    told.taps = Math.max(told.taps, taps);
    told.shown = Math.max(told.shown, shown);
  });
  await firstProduct(page).evaluate((button: HTMLElement, every) => {
    let taps = 0;
    const tell = () => {
      const shown = Number.parseInt(button.querySelector('.sell-count')?.textContent ?? '', 10);
      Reflect.get(globalThis, 'tell')(taps, shown);
    };
    new MutationObserver(tell).observe(button, {
      subtree: true,
      childList: true,
      characterData: true,
    });
    setInterval(() => {
      taps += 1;
      tell();
      button.click();
    }, every);
  }, TAP_EVERY_MS);
  return told;
}

/** Ids of the lines in the phone's store of stall sheets, as the disk has them. */
function stallLines(page: Page): Promise<string[]> {
  return page.evaluate(async (name) => {
    const asked = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const db = await asked(indexedDB.open(name));
    const rows: { id: string }[] = await asked(
      db.transaction('entries').objectStore('entries').getAll(),
    );
    db.close();
    return rows.map(({ id }) => id);
  }, STALL_STORE);
}
