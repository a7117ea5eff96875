import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { RecordsAnswer } from '../../src/contract/api.ts';
import { recordsOf } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, press, reflowAt320, WIDE } from './harness.ts';

describe('a first run with a price list', () => {
  it('asks four questions, tells each wrong row, and starts with the products', async () => {
    const app = await openApp({ book: 'none', viewport: WIDE });
    const { page } = app;
    await page.getByLabel('What is the group called?').fill('Wrenfield Young Rowers');
    await page.getByLabel('What is the season called?').fill('Spring 2028');
    await page.getByLabel('Last day').fill('2030-04-30');
    await page
      .getByLabel('What do you sell, and for how much?')
      .fill('Name\tPrice\tCase\tCode\nPlum jam\t6.50\t6\tP1\nMint tea\tfive\t12\nOats\t3\t');
    await page.getByText('Not kept: Code.').waitFor();
    await page.getByText('$6.50 a unit, 6 in a case').waitFor();
    await press(page, 'Start an empty season');
    const summary = page.getByRole('alert');
    const wrong = summary.getByRole('link');
    expect(await wrong.allTextContents()).toEqual([
      'Price list, row 3: Write an amount like 12.00.',
    ]);
    expect(await axeFindings(page)).toEqual([]);
    expect((await reflowAt320(page)).overflow).toBe(0);
    await wrong.click();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('5,25');
    await page.keyboard.press('Tab');
    await press(page, 'Start an empty season');
    const steps = page.getByRole('region', { name: 'First steps' });
    await steps.waitFor();
    expect(await steps.locator('[aria-current=step]').textContent()).toBe('Families and sellers');
    const book = `/api/books/wrenfield-young-rowers/spring-2028/records?after=0`;
    const { records } = (await app.api('GET', book)) as RecordsAnswer;
    expect(
      records.map(({ record }) => record).filter(({ kind }) => kind === 'product'),
    ).toMatchObject([
      { product: 'plum-jam', name: 'Plum jam', price: 650, case: 6 },
      { product: 'mint-tea', name: 'Mint tea', price: 525, case: 12 },
      { product: 'oats', name: 'Oats', price: 300, case: 1 },
    ]);
    expect(app.complaints).toEqual([]);
    await app.close();
  });
});

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

  it('adds what a price list has and the book has not', async () => {
    const { page } = app;
    await app.goto('/products');
    await page.getByRole('link', { name: 'Paste a price list' }).click();
    await page.getByLabel('Paste here').fill('Mint tea;5,00;12\nPlum jam;6,50;6\nRye bread;4;');
    await page.getByText('already in the book').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect((await reflowAt320(page)).overflow).toBe(0);
    await page.getByRole('button', { name: 'Leave out row 3' }).click();
    await page.getByRole('button', { name: 'Save 1 product' }).click();
    await page.getByRole('row', { name: /Plum jam.*\$6\.50/ }).waitFor();
    expect((await recordsOf(app, 'product')).at(-1)).toMatchObject({
      product: 'plum-jam',
      price: 650,
      case: 6,
    });
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
