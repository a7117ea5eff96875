import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordsOf, sendRecords } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, reflowAt320 } from './harness.ts';

/** One payment of a family with two sellers, from the list of families to its statement. */
describe('a family pays once for two sellers', () => {
  let app: OpenedApp;
  const payments = async () =>
    (await recordsOf(app, 'payment')).filter((payment) => payment.receipt === 'T-100');

  beforeAll(async () => {
    app = await openApp({ book: 'demo' });
    const goods = { date: '2027-04-02', kind: 'handover' };
    // Two of one family: 3 × $8.50 and 1 × $8.50, so that $10.01 is spread 7.51 and 2.50.
    await sendRecords(
      app,
      { ...goods, seller: 'linnea', lines: { honey: 3 } },
      { ...goods, seller: 'otto', lines: { honey: 1 } },
    );
  });
  afterAll(() => app.close());

  it('finds the family, shows the spread before saving and saves one record a seller', async () => {
    const { page } = app;
    await app.goto('/families');
    await page.getByLabel('Find a family or seller').fill('bergstrom');
    await page.getByRole('link', { name: 'Zoë Bergström' }).click();
    await page.getByRole('heading', { name: 'Zoë Bergström' }).waitFor();
    const form = page.getByRole('form', { name: 'Payment of the family' });
    await form.getByLabel('Amount').fill('10.01');
    const spread = form.getByRole('table', { name: 'How it is spread' });
    expect(await spread.getByRole('row').allInnerTexts()).toEqual([
      expect.anything(),
      expect.stringMatching(/Linnea B\.\s+\$25\.50 still to pay\s+\$7\.51/),
      expect.stringMatching(/Otto B\.\s+\$8\.50 still to pay\s+\$2\.50/),
    ]);
    expect(await payments()).toEqual([]);
    await form.getByLabel('Receipt number').fill('T-100');
    await form.getByRole('button', { name: 'Save the payment' }).click();
    await page.getByRole('status').getByText('Saved').waitFor();
    const saved = await payments();
    expect(saved.map(({ seller, cents, tender }) => [seller, cents, tender])).toEqual([
      ['linnea', 751, 'cash'],
      ['otto', 250, 'cash'],
    ]);
    await page.getByText('still to pay $23.99').waitFor();
  });

  it('takes both back with one Undo', async () => {
    const { page } = app;
    await page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
    await page.getByText('still to pay $34.00').waitFor();
  });

  it('says what does not fit, keeps what was typed, and leads to the field', async () => {
    const { page } = app;
    const form = page.getByRole('form', { name: 'Payment of the family' });
    await form.getByLabel('Amount').fill('ten');
    await form.getByRole('button', { name: 'Save the payment' }).click();
    const summary = page.getByRole('alert');
    await summary.getByRole('link', { name: /Write an amount/ }).click();
    expect(await form.getByLabel('Amount').inputValue()).toBe('ten');
    expect(await form.getByLabel('Amount').evaluate((box) => box === document.activeElement)).toBe(
      true,
    );
    expect(await axeFindings(page)).toEqual([]);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
  });

  it('ends without a complaint of the browser', () => {
    expect(app.complaints).toEqual([]);
  });
});
