import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordsOf, sendRecords } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, PHONE, reflowAt320 } from './harness.ts';

describe('taking back and putting right', () => {
  let app: OpenedApp;

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: PHONE });
  });
  afterAll(() => app.close());

  const stillToPay = async () => {
    await app.goto('/families/farkas');
    await app.page.getByText('At the end').waitFor();
    return (await app.page.locator('.statement-sentence').innerText()).replace(/^.*paid/, 'paid');
  };

  it('takes a removal back so that a bounced cheque still finds its payment', async () => {
    const { page } = app;
    const bounced = (await recordsOf(app, 'bounced')).at(-1);
    const cheque = bounced?.payment ?? '';
    const before = await stillToPay();
    await app.goto(`/records/${cheque}`);
    await page.getByRole('button', { name: 'Remove' }).click();
    await page.getByLabel('Why is it removed?').fill('Keyed twice, see R-006-2');
    await page.getByRole('dialog').getByRole('button', { name: 'Remove' }).click();
    const saved = page.getByRole('status');
    await saved.getByText(/^Removed: Payment from/).waitFor();
    expect(await stillToPay()).not.toBe(before);
    await app.goto(`/records/${cheque}`);
    await page.getByText('This record no longer counts.').waitFor();
    await page.getByRole('button', { name: /^Undo: Removed/ }).click();
    await page.getByRole('link', { name: 'Edit' }).waitFor();
    expect(page.url()).toContain(cheque);
    const [removal, back] = (await recordsOf(app, 'void')).slice(-2);
    expect(removal?.voids).toBe(cheque);
    await app.goto(`/records/${removal?.id}`);
    await page.getByRole('definition').getByText('Keyed twice, see R-006-2').waitFor();
    expect(back?.voids).toBe(removal?.id);
    expect(await stillToPay()).toBe(before);
    await app.goto(`/records/${cheque}`);
    await page.getByText(/^Removal taken back: Payment from/).waitFor();
    expect(await axeFindings(page)).toEqual([]);
  });

  it('has the same Undo in the line of what was just saved, over and over', async () => {
    const { page } = app;
    await app.goto('/add/bank-fee');
    await page.getByLabel('Amount').fill('3.50');
    await page.getByRole('button', { name: 'Save' }).click();
    const saved = page.getByRole('status');
    await saved.getByText('Bank fee: $3.50').waitFor();
    for (const words of [/^Removed: Bank fee/, /^Removal taken back: Bank/, /^Removed: Bank fee/]) {
      await saved.getByRole('button', { name: 'Undo' }).click();
      await saved.getByText(words).waitFor();
    }
    const fee = (await recordsOf(app, 'bank-fee')).filter(({ cents }) => cents === 350);
    expect(fee).toHaveLength(1);
  });

  it('opens a new record on the day that is being worked on, not before the season', async () => {
    await app.goto('/add/payment');
    const day = await app.page.getByLabel('Day').inputValue();
    expect(day >= '2027-04-03').toBe(true);
  });
});

describe('a deposit', () => {
  let app: OpenedApp;
  let ids: string[];

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: PHONE });
    const date = '2027-04-03';
    const payment = { kind: 'payment', date };
    ids = await sendRecords(
      app,
      { ...payment, seller: 'ada', tender: 'cash', cents: 1600 },
      { ...payment, seller: 'reka', tender: 'cheque', cents: 4000 },
      { ...payment, seller: 'tobi', tender: 'card', cents: 900 },
    );
    await app.goto('/add/deposit');
  });
  afterAll(() => app.close());

  it('offers what waits in the cash box, and its amount follows the ticks', async () => {
    const { page } = app;
    await page.getByLabel(/Payment from Ada M/).check();
    await page.getByText('$16.00').first().waitFor();
    expect(await page.getByLabel('Amount').inputValue()).toBe('16.00');
    expect(await page.getByLabel(/Payment from Tobi A.*\$9\.00/).count()).toBe(0);
    await page.getByLabel(/Payment from Réka F.*cheque/).check();
    expect(await page.getByLabel('Amount').inputValue()).toBe('56.00');
    await page.getByLabel('Amount').fill('55');
    await page.getByLabel(/Payment from Ada M/).uncheck();
    expect(await page.getByLabel('Amount').inputValue()).toBe('55');
    await page.getByLabel('Amount').fill('40.00');
    expect(await axeFindings(page)).toEqual([]);
    expect((await reflowAt320(page)).overflow).toBe(0);
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('status').getByText('Deposit at the bank: $40.00').waitFor();
    expect((await recordsOf(app, 'deposit')).at(-1)).toMatchObject({
      cents: 4000,
      items: [ids[1]],
    });
    // The next deposit offers what is left.
    expect(await page.getByLabel(/Payment from Réka F.*cheque/).count()).toBe(0);
    expect(await page.getByLabel(/Payment from Ada M/).count()).toBe(1);
  });

  it('is edited with its own receipts ticked', async () => {
    const { page } = app;
    const deposit = (await recordsOf(app, 'deposit')).at(-1)?.id;
    await app.goto(`/records/${deposit}/edit`);
    expect(await page.getByLabel(/Payment from Réka F.*cheque/).isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Tick all' }).click();
    expect(await page.getByLabel('Amount').inputValue()).toBe('56.00');
    await page.getByRole('button', { name: 'Save the edit' }).click();
    await page.getByRole('status').getByText('Deposit at the bank: $56.00').waitFor();
    expect((await recordsOf(app, 'deposit')).at(-1)?.items).toHaveLength(2);
    expect(app.complaints).toEqual([]);
  });
});
