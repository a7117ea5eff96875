import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordsOf, sendRecords } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, reflowAt320, WIDE } from './harness.ts';

/** A stall from its settle sheet to its share-out, at the price of its own day. */
describe('a stall is settled and shared out', () => {
  let app: OpenedApp;
  const close = async () =>
    (await recordsOf(app, 'stall-close')).filter((record) => record.stall === 'quay').at(-1);

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: WIDE });
    await sendRecords(app, {
      kind: 'stall',
      stall: 'quay',
      host: 'market',
      starts: '2027-04-03T09:00',
      ends: '2027-04-03T12:00',
      shifts: [
        { seller: 'ada', from: '09:00', to: '12:00' },
        { seller: 'tobi', from: '09:00', to: '12:00' },
      ],
    });
    await app.goto('/stalls/quay');
  });
  afterAll(() => app.close());

  it('works the money out while it is typed', async () => {
    const { page } = app;
    await page.getByLabel('Wildflower honey, taken out, cases of 12').fill('1');
    await page.getByLabel('Wildflower honey, brought back, singles').fill('4');
    await page.getByLabel('Wildflower honey, damaged, singles').fill('1');
    await page.getByText('7 × $8.50 = $59.50').waitFor();
    await page.getByLabel('Pieces of $20.00').fill('3');
    await page.getByLabel('Pieces of $5.00').fill('1');
    await page.getByLabel('Float').fill('20');
    await page.getByLabel('Card takings').fill('10');
    await page.getByText('$4.50 short').waitFor();
  });

  it('warns of one counter, and of two who share a home, without refusing', async () => {
    const { page } = app;
    await page.getByLabel('First counter').fill('Robin Marsh');
    await page.getByText('One person only.').waitFor();
    await page.getByLabel('Second counter').fill('Alex Marsh');
    await page.getByText('Both have the same last name.').waitFor();
    await page.getByLabel('Second counter').fill('Sam Winter');
    await expect.poll(() => page.getByText('Both have the same last name.').count()).toBe(0);
  });

  it('asks what cash was paid out for, and keeps the sheet', async () => {
    const { page } = app;
    await page.getByLabel('Paid out of the box').fill('4.50');
    await page.getByText('✓ agrees').waitFor();
    await page.getByRole('button', { name: 'Settle the stall' }).click();
    const missing = { name: 'Write what the cash was paid out for.' };
    await page.getByRole('alert').getByRole('link', missing).click();
    expect(await close()).toBe(undefined);
    await page.getByLabel('Paid out of the box').fill('');
  });

  it('is saved with its difference, the cash following from the pieces', async () => {
    const { page } = app;
    await page.getByRole('button', { name: 'Settle the stall' }).click();
    await page.getByRole('heading', { name: 'Settled' }).waitFor();
    expect(await close()).toMatchObject({
      date: '2027-04-03',
      out: { honey: 12 },
      back: { honey: 4 },
      damaged: { honey: 1 },
      float: 2000,
      cash: 6500,
      cards: 1000,
      cheques: 0,
      tally: { '2000': 3, '500': 1 },
      counters: ['Robin Marsh', 'Sam Winter'],
    });
  });

  it('is edited in its sheet, and the edit stands for the first record', async () => {
    const { page } = app;
    const first = await close();
    await page.getByRole('button', { name: 'Edit', exact: true }).click();
    expect(await page.getByLabel('Pieces of $20.00').inputValue()).toBe('3');
    await page.getByLabel('Cheques').fill('4.50');
    await page.getByRole('button', { name: 'Save the changes' }).click();
    await page.getByText('✓ agrees').first().waitFor();
    await expect.poll(close).toMatchObject({ cheques: 450, replaces: first?.id });
  });

  it('is filled in by the fair share at once, and shared around what is typed', async () => {
    const { page } = app;
    const ada = page.getByLabel('Ada M., Wildflower honey', { exact: true });
    const tobi = page.getByLabel('Tobi A., Wildflower honey', { exact: true });
    expect(Number(await ada.inputValue()) + Number(await tobi.inputValue())).toBe(7);
    await ada.fill('8');
    await page.getByText('8 locked, the pool has 7. Lower or unlock 1.').waitFor();
    await page.getByText('1 too much').waitFor();
    await page.getByRole('button', { name: 'Save the share-out' }).click();
    await page.getByRole('alert').getByText('8 locked, the pool has 7').waitFor();
    await ada.fill('5');
    expect(await tobi.inputValue()).toBe('2');
    const lock = page.getByRole('button', { name: 'Lock Ada M., Wildflower honey' });
    expect(await lock.getAttribute('aria-pressed')).toBe('true');
    expect(await axeFindings(page)).toEqual([]);
    expect((await reflowAt320(page)).overflow).toBe(0);
  });

  it('lets go of a lock, and saves what stands', async () => {
    const { page } = app;
    await page.getByRole('button', { name: 'Lock Ada M., Wildflower honey' }).click();
    const ada = Number(
      await page.getByLabel('Ada M., Wildflower honey', { exact: true }).inputValue(),
    );
    expect(Math.abs(ada - 3.5)).toBeLessThanOrEqual(1.5);
    await page.getByRole('button', { name: 'Save the share-out' }).click();
    await page.getByText('0 units not yet shared').waitFor();
    const last = async () => (await recordsOf(app, 'shareout')).at(-1);
    await expect.poll(last).toMatchObject({
      pool: 'stall:quay',
      lines: { ada: { honey: ada }, tobi: { honey: 7 - ada } },
    });
    expect(app.complaints).toEqual([]);
  });
});
