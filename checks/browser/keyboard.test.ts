import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordsOf, sendRecords } from './book-records.ts';
import { type OpenedApp, openApp, WIDE } from './harness.ts';
import { choose, keyOn, tabTo, write } from './keyboard.ts';

/** A season's work with the keyboard alone, from set-up to the closing list. */
describe('by keyboard alone', () => {
  let app: OpenedApp;

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: WIDE });
    await sendRecords(app, {
      kind: 'stall',
      stall: 'quay',
      host: 'market',
      starts: '2027-04-03T09:00',
      ends: '2027-04-03T12:00',
      shifts: [{ seller: 'ada', from: '09:00', to: '12:00' }],
    });
    await app.goto('/');
  });
  afterAll(() => app.close());

  const heading = (name: string | RegExp) =>
    app.page.getByRole('heading', { level: 1, name }).waitFor();
  const saved = (words: string | RegExp) => app.page.getByRole('status').getByText(words).waitFor();

  it('sets up: the form has the focus when it opens, and the button when it closes', async () => {
    const { page } = app;
    await keyOn(page, 'link', 'Set-up');
    await heading('Set-up');
    await keyOn(page, 'link', 'Host shops');
    await heading('Host shops');
    const focused = () =>
      page.evaluate(() => {
        const at = document.activeElement;
        return at instanceof HTMLInputElement ? at.labels?.[0]?.textContent : at?.textContent;
      });
    await keyOn(page, 'button', 'Add a host shop');
    await expect.poll(focused).toBe('Name');
    await page.keyboard.type('Ferry landing');
    await page.keyboard.press('Enter');
    await page.getByRole('row', { name: /Ferry landing/ }).waitFor();
    await expect.poll(focused).toBe('Add a host shop');
    await keyOn(page, 'button', 'Edit Ferry landing');
    await expect.poll(focused).toBe('Name');
    await page.keyboard.press('End');
    await page.keyboard.type(' kiosk');
    await page.keyboard.press('Enter');
    await page.getByRole('row', { name: /Ferry landing kiosk/ }).waitFor();
    expect((await recordsOf(app, 'host')).at(-1)).toMatchObject({ name: 'Ferry landing kiosk' });
  });

  it('records a delivery, goods out and a payment', async () => {
    const { page } = app;
    await keyOn(page, 'link', 'Record');
    await heading('Record');
    await keyOn(page, 'link', /^Delivery/);
    await heading('Delivery');
    await write(page, 'Wildflower honey, cases of 12', '2');
    await page.keyboard.press('Enter');
    await saved(/^Delivery: 24 Wildflower honey/);
    await keyOn(page, 'link', 'Goods out');
    await heading('Goods out');
    await choose(page, 'Seller', 'Ada');
    await write(page, 'Wildflower honey, singles', '3');
    await page.keyboard.press('Enter');
    await saved('Goods out to Ada M.: 3 Wildflower honey, $25.50');
    await keyOn(page, 'link', 'Payment');
    await heading('Payment');
    await choose(page, 'Seller', 'Ada');
    await tabTo(page, 'button', '$25.50 still to pay');
    await page.keyboard.press('Space');
    await tabTo(page, 'radio', 'Cash');
    await page.keyboard.press('ArrowRight');
    await write(page, /^Receipt number/, 'R-900');
    await page.keyboard.press('Enter');
    await saved('Payment from Ada M.: $25.50 by cheque, receipt R-900');
  });

  it('settles a stall', async () => {
    const { page } = app;
    await keyOn(page, 'link', 'Stalls');
    await heading('Stalls');
    await keyOn(page, 'link', 'Wrenfield market hall, 09:00 to 12:00');
    await heading('Wrenfield market hall');
    await write(page, 'Wildflower honey, taken out, singles', '4');
    await write(page, 'Wildflower honey, brought back, singles', '2');
    await write(page, 'Pieces of $20.00', '1');
    await write(page, 'Float', '3');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Settled' }).waitFor();
    expect((await recordsOf(app, 'stall-close')).at(-1)).toMatchObject({
      stall: 'quay',
      out: { honey: 4 },
      back: { honey: 2 },
      cash: 2000,
    });
  });

  it('counts the stockroom', async () => {
    const { page } = app;
    await keyOn(page, 'link', 'Count');
    await heading('Count');
    await write(page, 'Full cases of 6', '0');
    for (const units of ['0', '0', '6', '19', '0', '9', '0', '0']) {
      await page.getByText(`to count`).first().waitFor();
      await page.keyboard.press('Tab');
      await page.keyboard.type(units);
      await page.keyboard.press('Enter');
    }
    await page.getByText('Every product is counted.').waitFor();
    await keyOn(page, 'button', 'Save the count');
    await heading(/^Count of /);
    await page.getByText('agrees').first().waitFor();
  });

  it('finds a record, edits it and takes the edit back', async () => {
    const { page } = app;
    await keyOn(page, 'link', 'Find');
    await heading('Find');
    await write(page, /^Words or amount/, 'R-900');
    await page.getByRole('heading', { name: '1 record' }).waitFor();
    await keyOn(page, 'link', /^Edit/);
    await heading('Edit: Payment');
    await write(page, 'Amount', '20');
    await page.keyboard.press('Enter');
    await saved('Payment from Ada M.: $20.00 by cheque, receipt R-900');
    await keyOn(page, 'button', 'Undo');
    await saved('Payment from Ada M.: $25.50 by cheque, receipt R-900');
    expect((await recordsOf(app, 'payment')).slice(-3).map(({ cents }) => cents)).toEqual([
      2550, 2000, 2550,
    ]);
  });

  it('goes through the closing list to the check before closing', async () => {
    const { page } = app;
    await keyOn(page, 'link', 'Closing list');
    await heading('Closing list');
    await tabTo(page, 'link', 'Record a refund');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await keyOn(page, 'link', /^Payment from Noa W\./);
    await heading('Payment');
    await page.goBack();
    await heading('Closing list');
    await keyOn(page, 'link', 'Check before closing');
    await heading('Close the season');
    await write(page, 'Second person', 'Sam Winter');
    await keyOn(page, 'button', 'Close with items open');
    await page.getByRole('alert').getByText('Write why it closes with items open.').waitFor();
    expect(app.complaints).toEqual([]);
  });
});
