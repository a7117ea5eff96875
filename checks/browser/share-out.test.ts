import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { RecordOf } from '../../src/records/record.ts';
import { recordsOf, sendRecords } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, PHONE, reflowAt320, WIDE } from './harness.ts';
import { keyOn, tabTo } from './keyboard.ts';

type Shares = Readonly<Record<string, Readonly<Record<string, number>>>>;

/** Units by product that a share-out gives, all sellers together. */
function given(lines: Shares): Record<string, number> {
  const units: Record<string, number> = {};
  for (const seller of Object.values(lines)) {
    for (const product in seller) units[product] = (units[product] ?? 0) + (seller[product] ?? 0);
  }
  return units;
}

/** The last share-out, once the server has it for this pool. */
async function arrived(app: OpenedApp, pool: string): Promise<RecordOf<'shareout'>> {
  const last = async () => (await recordsOf(app, 'shareout')).at(-1);
  await expect.poll(async () => (await last())?.pool).toBe(pool);
  const shareout = await last();
  if (shareout === undefined) throw new Error('It was there before.');
  return shareout;
}

const SOLD = {
  honey: 17,
  jam: 13,
  marmalade: 11,
  chutney: 19,
  granola: 7,
  'granola-nut': 5,
  'tea-mint': 23,
  'tea-berry': 29,
};

describe('a large pool on a phone, by keyboard', () => {
  let app: OpenedApp;
  const sellers = [
    ['ada', 'bia', 'chidera', 'ines', 'jun', 'layla'],
    ['linnea', 'mei', 'noa', 'otto', 'petr', 'reka'],
  ].flat();

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: PHONE });
    const shifts = sellers.map((seller, place) => ({
      seller,
      from: '09:00',
      to: `${10 + (place % 3)}:${place % 2 === 0 ? '00' : '20'}`,
    }));
    await sendRecords(
      app,
      {
        kind: 'stall',
        stall: 'quay',
        host: 'market',
        starts: '2027-04-03T09:00',
        ends: '2027-04-03T13:00',
        shifts,
      },
      {
        kind: 'stall-close',
        date: '2027-04-03',
        stall: 'quay',
        out: SOLD,
        back: {},
        float: 0,
        cash: 0,
        cards: 0,
        cheques: 0,
      },
    );
    await app.goto('/stalls/quay');
  });
  afterAll(() => app.close());

  it('shows what there is on top, and nothing left to share', async () => {
    const table = app.page.getByRole('table', { name: 'Units by seller and product' });
    expect(await table.locator('tbody tr').count()).toBe(12);
    const pool = table.getByRole('row', { name: 'In the pool' });
    expect(await pool.locator('td').allTextContents()).toContain('124');
    const left = await table.getByRole('row', { name: 'Not yet shared' }).locator('td').all();
    for (const cell of left) expect(await cell.textContent()).toBe('0');
    expect((await reflowAt320(app.page)).overflow).toBe(0);
    expect(await axeFindings(app.page)).toEqual([]);
  });

  it('goes from seller to seller by the arrow keys, and locks what is typed', async () => {
    const { page } = app;
    await tabTo(page, 'textbox', 'Ada M., Wildflower honey');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.type('4');
    const bia = page.getByLabel('Bia P., Wildflower honey', { exact: true });
    expect(await bia.inputValue()).toBe('4');
    await page.keyboard.press('Enter');
    const focused = page.locator(':focus');
    expect(await focused.getAttribute('aria-label')).toBe('Chidera O., Wildflower honey');
    await page.getByRole('button', { name: 'Open the lock' }).waitFor();
  });

  it('saves every product whole, the locked cell as it was typed', async () => {
    const { page } = app;
    await keyOn(page, 'button', 'Save the share-out');
    await page.getByText('0 units not yet shared').waitFor();
    const shareout = await arrived(app, 'stall:quay');
    expect(given(shareout.lines)).toEqual(SOLD);
    expect(shareout.lines.bia?.honey).toBe(4);
    expect(app.complaints).toEqual([]);
  });
});

describe('pools that are no stall’s, and lifts', () => {
  let app: OpenedApp;

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: WIDE });
    await sendRecords(app, {
      kind: 'online',
      date: '2027-04-03',
      order: 'O-700',
      lines: { honey: 3, jam: 2 },
      paid: 3850,
      sent: 'post',
    });
  });
  afterAll(() => app.close());

  it('posted orders are reached from the closing list and go evenly to all', async () => {
    const { page } = app;
    await app.goto('/closing');
    const row = page.getByRole('listitem').filter({ hasText: 'Posted orders shared out' });
    await row.getByRole('link', { name: 'Share out' }).click();
    await page.getByRole('heading', { name: 'Posted orders', level: 1 }).waitFor();
    await page.getByText('5 units over 14 sellers evenly').waitFor();
    await page.getByText('Seller by seller').click();
    await page.getByText(/^Ada M\.: an even part is 0\.36 due/).waitFor();
    await page.getByLabel('By hand').check();
    await page.getByLabel('Part of Ada M.').fill('x');
    await page.getByText('Write whole numbers in the marked cells.').waitFor();
    await page.getByLabel('Part of Ada M.').fill('1');
    await page.getByLabel('Evenly').check();
    await page.getByRole('button', { name: 'Save the share-out' }).click();
    await page.getByText('0 units not yet shared').waitFor();
    const shareout = await arrived(app, 'post');
    expect(given(shareout.lines)).toEqual({ honey: 3, jam: 2 });
  });

  it('a lift says what it and an even share reach, and is a share-out', async () => {
    const { page } = app;
    await app.goto('/stalls/garden-0327');
    await page.getByRole('link', { name: 'Lift to goals and prize steps instead' }).click();
    await page.getByText('Chosen on 1 Feb 2027, before the first stall.').waitFor();
    const ways = page.getByRole('table', { name: 'Both ways beside each other' });
    const goals = async (way: string) =>
      Number(await ways.getByRole('row', { name: way }).locator('td').first().textContent());
    expect(await goals('Lifted')).toBeGreaterThan(await goals('Shared evenly'));
    await page.getByLabel('Club shirt, 60 units').fill('1001');
    await page.getByText('Write a whole number from 0 to 1,000.').first().waitFor();
    await page.getByLabel('Club shirt, 60 units').fill('3');
    expect(await axeFindings(page)).toEqual([]);
    expect((await reflowAt320(page)).overflow).toBe(0);
    await page.getByRole('button', { name: 'Save this share-out' }).click();
    await page.getByText('Nothing to lift.').waitFor();
    const shareout = await arrived(app, 'stall:garden-0327');
    expect(shareout).toMatchObject({ date: '2027-03-27', note: 'Lifted to goals and prize steps' });
    const units = Object.values(given(shareout.lines));
    expect(units.reduce((sum, each) => sum + each, 0)).toBe(57);
  });

  it('a lift that was switched on after the first stall does not count', async () => {
    const { page } = app;
    await app.goto('/set-up/sharing');
    const box = page.getByLabel('Pools may go where they reach goals and prize steps');
    await box.uncheck();
    await page.getByRole('button', { name: 'Save the sharing rule' }).click();
    await page.getByText('lifts are not switched on').waitFor();
    const saved = async () => (await recordsOf(app, 'season')).at(-1);
    await expect.poll(saved).toMatchObject({
      group: 'Wrenfield Young Rowers',
      sharing: { weights: 'minutes', method: 'remainder', lift: false },
    });
    const { id: replaces = '', at: _at, by: _by, ...said } = (await saved()) ?? {};
    await sendRecords(app, { ...said, sharing: { lift: true }, replaces });
    await app.goto('/set-up/sharing');
    await page.getByText('They count from the next season.').waitFor();
    await app.goto('/pools/stall:nothing');
    await page.getByText('There is no such pool in this book.').waitFor();
    await app.goto('/pools/post/lift');
    await page.getByRole('link', { name: 'on its own sheet' }).waitFor();
    expect(app.complaints).toEqual([]);
  });
});
