import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordsOf } from './book-records.ts';
import { type OpenedApp, openApp, WIDE } from './harness.ts';

/** Prizes from the board over the order to the hand-out list, and what a host shop gets. */
describe('prizes and the report for a host shop', () => {
  let app: OpenedApp;

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: WIDE, path: '/prizes' });
  });
  afterAll(() => app.close());

  it('tells what is reached, what the next step wants, and what is not there', async () => {
    const { page } = app;
    const row = (name: string) => page.getByRole('row').filter({ hasText: name });
    await row('Ada M.').getByText('74 units').waitFor();
    await row('Layla H.').getByText('3 more, at 60: Club shirt').waitFor();
    await row('Mei L.')
      .getByText('Club shirt: Youth M was chosen, and the credit is 58 of 60.')
      .waitFor();
    const names = await page.locator('tbody th a').allTextContents();
    expect(names.indexOf('Réka F.')).toBeLessThan(names.indexOf('Rui P.'));
    await page.getByText('for the whole group. It is never parted by family.').waitFor();
  });

  it('takes a choice and "no prize" by a tap, and takes "no prize" back', async () => {
    const { page } = app;
    const bottle = page.getByLabel('Choice of Tobi A.: Water bottle');
    expect(await bottle.inputValue()).toBe('Green');
    await bottle.selectOption('Blue');
    await expect
      .poll(async () => (await recordsOf(app, 'choice')).at(-1))
      .toMatchObject({ seller: 'tobi', level: 'bottle', choice: 'Blue' });
    const patch = page.getByLabel('Choice of Bia P.: Season patch');
    await patch.selectOption('No prize, thank you');
    await expect
      .poll(async () => (await recordsOf(app, 'choice')).at(-1))
      .toMatchObject({ seller: 'bia', level: 'patch', choice: 'none' });
    const choice = (await recordsOf(app, 'choice')).at(-1);
    await patch.selectOption('gets it');
    await expect.poll(async () => (await recordsOf(app, 'void')).at(-1)?.voids).toBe(choice?.id);
  });

  it('orders by prize and choice, without what was forgone', async () => {
    const { page } = app;
    await page.getByRole('link', { name: 'Order', exact: true }).click();
    await page.getByText('a pool not yet shared.').waitFor();
    const pieces = async (...cells: string[]) =>
      page
        .getByRole('row', { name: cells.join(' ') })
        .locator('td')
        .last()
        .textContent();
    expect(await pieces('Season patch')).toBe('13');
    expect(await pieces('Water bottle', 'Blue')).toBe('4');
    expect(await pieces('Water bottle', 'Green')).toBe('1');
  });

  it('lists what to hand out, ticked here or on paper, and what a leader decides', async () => {
    const { page } = app;
    await app.goto('/prizes/hand-out');
    await page.getByText('Prizes: 20. Sellers: 13. Handed out: 0.').waitFor();
    const boxes = page.getByRole('checkbox', { name: /^Handed out/ });
    expect(await boxes.count()).toBe(20);
    // The box is ticked once the record is saved, a moment after the tap.
    await boxes.first().click();
    await page.getByText('Handed out: 1.').waitFor();
    expect((await recordsOf(app, 'choice')).at(-1)?.handed).toMatch(/^2027-/);
    const decide = page.getByRole('table', { name: 'Chosen, credit not there' });
    expect(await decide.getByRole('row').count()).toBe(7);
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
    expect(await boxes.first().isVisible()).toBe(true);
    await page.emulateMedia({ media: null });
    const pdf = page.getByRole('link', { name: 'List PDF, A4' });
    const answer = await page.request.get(`${app.origin}${await pdf.getAttribute('href')}`);
    expect(answer.headers()['content-type']).toBe('application/pdf');
  });

  it('gives a host shop its season on one page, without a seller’s name', async () => {
    const { page } = app;
    await app.goto('/set-up/hosts');
    await page.getByRole('link', { name: 'Report for Wrenfield market hall' }).click();
    await page.getByText('3 stalls, 12 h, 107 units').waitFor();
    const text = await page.locator('main').textContent();
    for (const { name } of await recordsOf(app, 'seller')) expect(text).not.toContain(name);
    const printed = await page.pdf({ format: 'A4' });
    expect(printed.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    expect(app.complaints).toEqual([]);
  });
});
