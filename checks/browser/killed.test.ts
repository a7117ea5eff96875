import { execFileSync } from 'node:child_process';
import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import { payment } from '../../src/journal/test-payments.ts';
import { allSent } from './all-sent.ts';
import {
  Phone,
  StoppableServer,
  saveFee,
  serverFees,
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
