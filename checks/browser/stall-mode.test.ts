import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allSent, bookKept } from './all-sent.ts';
import { axeFindings, BOOK, reflowAt320 } from './harness.ts';
import {
  ask,
  Phone,
  StoppableServer,
  serverRecords,
  signInAndKeep,
  startDemo,
} from './offline-app.ts';

/** A stall's day by taps on two phones, half of it without a server, and settled from both. */
describe('two phones at one stall', () => {
  const server = new StoppableServer();
  const [first, second] = [new Phone(), new Phone()];
  let one: Page;
  let two: Page;

  const open = (page: Page, part: string) =>
    page.goto(new URL(`/stalls/quay/${part}`, page.url()).href);
  const tap = (page: Page, name: string | RegExp) =>
    page.getByRole('button', { name }).first().click();
  const heading = (page: Page, name: string | RegExp) =>
    page.getByRole('heading', { level: 1, name }).waitFor();
  const sold = (page: Page, units: number) =>
    page.getByRole('status').getByText(`${units} sold`).waitFor();

  beforeAll(async () => {
    await server.start();
    one = await signInAndKeep(first, server);
    await startDemo(one);
    await ask(one, `/api/books/${BOOK.group}/${BOOK.season}/records`, { records: [STALL] });
    two = await signInAndKeep(second, server);
    await heading(two, 'Places');
    await bookKept(two);
    await open(two, 'sell');
    await heading(two, /^Sales at/);
  });
  afterAll(async () => {
    await first.end();
    await second.end();
    await server.end();
  });

  it('is looked through before it opens, and says what is missing', async () => {
    await open(one, 'sheet/ready');
    await one.getByText('11:00 to 12:00').waitFor();
    await one.getByLabel('First adult').fill('Robin Marsh');
    await one.getByLabel('Second adult').fill('Sam Winter');
    await one.getByLabel('Host contact').fill('Kim at the counter');
    await one.getByLabel('Who holds the cash').fill('Sam Winter');
    await one.getByLabel('When to stop').fill('Above 32 °C or at lightning');
    for (const box of await one.getByRole('checkbox').all()) await box.check();
    await one.getByRole('status').getByText('1 point left').waitFor();
    await tap(one, 'Save the card');
    await heading(one, /^Sales at/);
  });

  it('begins with goods and float counted', async () => {
    await one.getByRole('link', { name: 'Opening count' }).click();
    await one.getByLabel('Wildflower honey, cases of 12').fill('1');
    await one.getByLabel('Strawberry jam, singles').fill('6');
    await one.getByLabel('Pieces of $5.00').fill('4');
    await one.getByLabel('First counter').fill('Robin Marsh');
    await one.getByLabel('Second counter').fill('Sam Winter');
    await tap(one, 'Save the opening count');
    await heading(one, /^Sales at/);
    await allSent(one);
    await server.stop();
  });

  it('sells without a server: a tap a unit, the change of what is handed over', async () => {
    const honey = one.getByRole('button', { name: /^Wildflower honey/ });
    const size = await honey.boundingBox();
    expect(size?.height).toBeGreaterThanOrEqual(64);
    await honey.click();
    const before = await honey.boundingBox();
    await honey.click();
    await sold(one, 2);
    expect(await honey.boundingBox()).toEqual(before);
    await tap(one, '$20.00');
    await one.getByText('Change $3.00').waitFor();
    await one.getByText('3 × $1.00').waitFor();
    await one.reload();
    await sold(one, 2);
    await one.getByText('Change $3.00').waitFor();
    await one.getByText('Saved on this phone', { exact: true }).waitFor();
    await tap(one, /^Strawberry jam/);
    await sold(one, 3);
    await tap(one, 'Undo Strawberry jam');
    await sold(one, 2);
    expect(await axeFindings(one)).toEqual([]);
    expect((await reflowAt320(one)).overflow).toBe(0);
  });

  it('takes goods brought, a drop and a count of its own on the second phone', async () => {
    await tap(two, /^Strawberry jam/);
    await sold(two, 1);
    await open(two, 'sheet/brought');
    await two.getByLabel('Strawberry jam, singles').fill('6');
    await tap(two, 'Save the goods brought');
    await heading(two, /^Sales at/);
    await open(two, 'sheet/drop');
    await two.getByLabel('Pieces of $20.00').fill('1');
    await two.getByLabel('Who gives it').fill('Robin Marsh');
    await tap(two, 'Save the cash drop');
    await two.getByRole('alert').getByText('Write who holds it now: another adult.').waitFor();
    await two.getByLabel('Who holds it now').fill('Alex Holt');
    await tap(two, 'Save the cash drop');
    await heading(two, 'Sheet of the stall');
    await open(two, 'sheet/open');
    await two.getByLabel('Strawberry jam, singles').fill('1');
    await second.close();
    two = await second.open(`${server.origin}/stalls/quay/sheet/open`);
    expect(await two.getByLabel('Strawberry jam, singles').inputValue()).toBe('1');
    await tap(two, 'Save the opening count');
    await heading(two, /^Sales at/);
    await sold(two, 1);
  });

  it('comes together whole once both have a server again', async () => {
    await server.start();
    two = await signInAndKeep(second, server);
    await open(two, 'sell');
    await tap(two, /^Strawberry jam/);
    await sold(two, 2);
    await open(two, 'sheet');
    await tap(two, 'Hand in this phone’s lines');
    await two
      .getByRole('link', { name: 'Settle the stall' })
      .or(two.getByRole('heading', { name: 'Phones of this stall' }))
      .first()
      .waitFor();
    await two.getByText('only on this phone').waitFor({ state: 'detached' });
    await allSent(two);
    one = await signInAndKeep(first, server);
    await open(one, 'sheet');
    await one.getByText('4 tapped as sold').waitFor();
    await one.getByText('There are 2 opening counts.').waitFor();
    expect(await axeFindings(one)).toEqual([]);
    const whole = one.getByRole('listitem').filter({ hasText: '12 Wildflower honey' });
    await whole.getByRole('button', { name: 'Only this one' }).click();
    await one.getByText('There are 2 opening counts.').waitFor({ state: 'detached' });
    const left = one.getByRole('row', { name: /^Strawberry jam/ });
    expect((await left.getByRole('cell').allTextContents()).map(Number)).toEqual([12, 2, 10]);
    await one.reload();
    await one.getByText('4 tapped as sold').waitFor();
  });

  it('is counted blind, and settled from the counts with what differs', async () => {
    await open(one, 'sheet/count');
    await one.getByLabel('Wildflower honey, singles').first().fill('10');
    await one.getByLabel('Strawberry jam, singles').first().fill('9');
    expect(await one.locator('main').textContent()).not.toMatch(/tapped as sold|\d+ sold/);
    await one.getByLabel('Pieces of $5.00').fill('4');
    await one.getByLabel('Pieces of $1.00').fill('14');
    await one.getByLabel('First counter').fill('Robin Marsh');
    await one.getByLabel('Second counter').fill('Sam Winter');
    await tap(one, 'Save the closing count');
    await one.getByRole('link', { name: 'Settle the stall' }).click();
    await one.getByText('Filled in from the stall’s counts.').waitFor();
    expect(await one.getByLabel('Pieces of $20.00').inputValue()).toBe('1');
    // Sold 2 honey and 3 jam: 36.50. In the box 34.00, dropped 20.00, float 20.00: 34.00 came in.
    await one.getByText('$2.50 short').waitFor();
    await tap(one, 'Settle the stall');
    await one.getByRole('heading', { name: 'Settled' }).waitFor();
    await allSent(one);
    const closes = (await serverRecords(one)).filter(
      (record) => record.kind === 'stall-close' && record.stall === 'quay',
    );
    expect(closes).toHaveLength(1);
    expect(closes[0]).toMatchObject({
      out: { honey: 12, jam: 12 },
      back: { honey: 10, jam: 9 },
      float: 2000,
      cash: 5400,
      tally: { '100': 14, '500': 4, '2000': 1 },
      counters: ['Robin Marsh', 'Sam Winter'],
    });
  });

  it('says so where a phone hands in more after the settling', async () => {
    await open(two, 'sheet/brought');
    await two.getByLabel('Strawberry jam, singles').fill('2');
    await tap(two, 'Save the goods brought');
    await heading(two, /^Sales at/);
    await allSent(two);
    await one.evaluate(() => dispatchEvent(new Event('online')));
    await one.getByText('The stall’s sheet says other goods or cash than were settled.').waitFor();
    await two.getByRole('link', { name: 'The stall', exact: true }).click();
    await two.getByRole('heading', { name: 'Settled' }).waitFor();
    await two.getByText('The stall’s sheet says other goods or cash than were settled.').waitFor();
  });
});

const STALL = {
  id: '0195f3c2-7d1a-7c3e-9a41-1f0c6e2b7001',
  at: '2027-04-03T07:00:00.000Z',
  by: 'manager',
  kind: 'stall',
  stall: 'quay',
  host: 'market',
  starts: '2027-04-03T09:00',
  ends: '2027-04-03T12:00',
  shifts: [{ seller: 'ada', from: '09:00', to: '11:00' }],
};
