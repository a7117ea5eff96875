import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordsOf } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, reflowAt320, WIDE } from './harness.ts';

describe('setting up', () => {
  let app: OpenedApp;

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: WIDE });
  });
  afterAll(() => app.close());

  it('previews a pasted list, has it fixed in place and saves it at once', async () => {
    const { page } = app;
    await app.goto('/set-up/paste');
    await page
      .getByLabel('Paste here')
      .fill(
        'Child\tParent\tPhone\tGoal\nAlba Quay\tJo Quay\t555\t12.5\nBen Q.\tJo Quay\t\t40\n' +
          'Chidera O.\tChidi Okafor\t\t50',
      );
    await page.getByText('Not kept: Phone.').waitFor();
    const save = page.getByRole('button', { name: 'Save' });
    expect(await save.isDisabled()).toBe(true);
    await page.getByText('already in the book').waitFor();
    await page.getByText('write whole units like 120').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect((await reflowAt320(page)).overflow).toBe(0);
    await page.getByLabel('Goal, row 2').fill('12');
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: 'Save 2 sellers and 1 new family' }).click();
    await page.getByRole('heading', { name: 'Sellers', level: 1 }).waitFor();
    const families = await recordsOf(app, 'family');
    expect(families.at(-1)).toMatchObject({ family: 'quay', name: 'Jo Quay' });
    const sellers = (await recordsOf(app, 'seller')).slice(-2);
    expect(sellers.map(({ seller, name, family, goal }) => [seller, name, family, goal])).toEqual([
      ['alba-q', 'Alba Q.', 'quay', 12],
      ['ben-q', 'Ben Q.', 'quay', 40],
    ]);
  });

  it('changes a price from a day on, and keeps the history', async () => {
    const { page } = app;
    await app.goto('/products');
    await page.getByRole('button', { name: 'New price of Apple chutney' }).click();
    const form = page.getByRole('form', { name: 'New price of Apple chutney' });
    await form.getByLabel('Price of one unit').fill('6,50');
    await form.getByLabel('From this day on').fill('2027-03-15');
    await form.getByRole('button', { name: 'Save the new price' }).click();
    const row = page.getByRole('row', { name: /Apple chutney/ });
    await row.getByRole('link', { name: '$6.50 from 15 Mar 2027' }).waitFor();
    await row.getByRole('link', { name: '$6.00 from 1 Feb 2027' }).waitFor();
    expect((await recordsOf(app, 'product')).at(-1)).toMatchObject({
      product: 'chutney',
      price: 650,
      from: '2027-03-15',
      case: 6,
    });
  });

  it('shows a stop-sale wherever the product is listed, until it is lifted', async () => {
    const { page } = app;
    await app.goto('/set-up/holds');
    await page.getByRole('button', { name: 'Add a stop-sale' }).click();
    await page.getByLabel('Product').selectOption('honey');
    await page.getByLabel('Reason').fill('Lids may be loose');
    await page.getByRole('button', { name: 'Add the stop-sale' }).click();
    await page.getByRole('row', { name: /Wildflower honey/ }).waitFor();
    for (const path of ['/products', '/count', '/stalls/market-0213']) {
      await app.goto(path);
      if (path.startsWith('/stalls')) {
        await page.getByRole('button', { name: 'Edit', exact: true }).click();
      }
      if (path === '/count') await page.getByRole('button', { name: 'Wildflower honey' }).click();
      await page.getByText('Lids may be loose').first().waitFor();
    }
    await app.goto('/set-up/holds');
    await page.getByRole('button', { name: 'Edit the stop-sale of Wildflower honey' }).click();
    await page.getByLabel('Lifted: it may be sold again').check();
    await page.getByRole('button', { name: 'Save the changes' }).click();
    await page.getByRole('row', { name: /Wildflower honey.*lifted/ }).waitFor();
    await app.goto('/products');
    await page.getByRole('heading', { name: 'Products', level: 1 }).waitFor();
    expect(await page.getByText('Lids may be loose').count()).toBe(0);
    expect(app.complaints).toEqual([]);
  });
});
