import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordsOf } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, PHONE, reflowAt320 } from './harness.ts';

/** Counting blind by keyboard alone: what the book says comes only after the count is in. */
describe('a blind count', () => {
  let app: OpenedApp;
  /** The demo's book has these units in the stockroom at its end (scenarios/demo). */
  const IN_BOOK = [
    ['Strawberry jam', 6],
    ['Mint tea', 9],
  ] as const;

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: PHONE, path: '/count' });
  });
  afterAll(() => app.close());

  it('shows no figure of the book before it is saved', async () => {
    const { page } = app;
    const text = await page.locator('main').innerText();
    for (const [name, units] of IN_BOOK) {
      const own = text.split('\n').filter((line) => line.includes(name) || line === `${units}`);
      expect(own).toEqual([name]);
    }
    expect(text).not.toMatch(/by the book|short|over\b/i);
  });

  it('goes from product to product with Enter, and asks where nothing was written', async () => {
    const { page } = app;
    await page.getByLabel('Full cases of 6').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await page.getByText('Write 0 if there is none, or leave it out.').waitFor();
    let left = await page.getByRole('button', { name: 'to count' }).count();
    expect(left).toBe(8);
    // Apple chutney, marmalade, jam, honey, berry tea, mint tea, oat and hazelnut granola.
    for (const singles of ['0', '0', '5', '0', '0', '11', '0', '0']) {
      await page.getByLabel('Singles').fill(singles);
      await page.keyboard.press('Enter');
      left -= 1;
      await expect.poll(() => page.getByRole('button', { name: 'to count' }).count()).toBe(left);
    }
    await page.getByText('Every product is counted.').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect((await reflowAt320(page)).overflow).toBe(0);
  });

  it('tells each product apart once it is in: 1 short is not set off against 2 over', async () => {
    const { page } = app;
    await page.getByLabel('First counter').fill('Robin Marsh');
    await page.getByLabel('Second counter').fill('Sam Winter');
    await page.getByRole('button', { name: 'Save the count' }).click();
    await page.getByRole('heading', { name: 'Count of 3 Apr 2027' }).waitFor();
    await page.getByText('1 short, 2 over').waitFor();
    const table = page.getByRole('table', { name: /Counted against the book/ });
    const jam = table.getByRole('row', { name: /Strawberry jam/ });
    expect(await jam.innerText()).toMatch(/counted 5[\s\S]*by the book 6[\s\S]*1 short/);
    await jam.getByRole('link', { name: 'Write off, with a reason' }).waitFor();
    const tea = table.getByRole('row', { name: /Mint tea/ });
    expect(await tea.innerText()).toMatch(/2 over/);
    await tea.getByRole('link', { name: 'Record as found, with a reason' }).waitFor();
    const saved = (await recordsOf(app, 'count')).at(-1);
    expect(saved?.counters).toEqual(['Robin Marsh', 'Sam Winter']);
    expect(saved?.lines).toMatchObject({ jam: 5, 'tea-mint': 11, honey: 0 });
    expect(await axeFindings(page)).toEqual([]);
    expect((await reflowAt320(page)).overflow).toBe(0);
    expect(app.complaints).toEqual([]);
  });

  it('opens the form for a difference with its goods, day and count filled in', async () => {
    const { page } = app;
    const result = page.url();
    await page.getByRole('link', { name: 'Write off, with a reason' }).click();
    await page.getByRole('heading', { name: 'Write-off', level: 1 }).waitFor();
    expect(await page.getByLabel('Strawberry jam, singles').inputValue()).toBe('1');
    expect(await page.getByLabel('Day').inputValue()).toBe('2027-04-03');
    const usual = page.getByRole('group', { name: 'Usual reasons' });
    expect(await usual.getByRole('button').allTextContents()).toEqual([
      'Broken',
      'Out of date',
      'Lost',
      'Given as tasting',
    ]);
    const reason = page.getByLabel('Reason', { exact: true });
    await usual.getByRole('button', { name: 'Lost' }).click();
    expect(await reason.inputValue()).toBe('Lost');
    await usual.getByRole('button', { name: 'Broken' }).click();
    expect(await reason.inputValue()).toBe('Broken');
    expect(await usual.locator('[aria-pressed=true]').allTextContents()).toEqual(['Broken']);
    await reason.fill('dropped by the door');
    await usual.getByRole('button', { name: 'Broken' }).click();
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('status').getByText('Write-off of 1 Strawberry jam').waitFor();
    expect((await recordsOf(app, 'loss')).at(-1)).toMatchObject({
      date: '2027-04-03',
      lines: { jam: 1 },
      reason: 'Broken, dropped by the door',
      note: 'Stockroom count of 3 Apr 2027: 1 short',
    });
    await page.goto(result);
    await page.getByRole('link', { name: 'Record as found, with a reason' }).click();
    await page.getByLabel('Reason').fill('Behind the crates');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('status').getByText('Found in the stockroom: 2 Mint tea').waitFor();
    await page.goto(result);
    await page.getByRole('heading', { name: 'Count of 3 Apr 2027' }).waitFor();
    expect(await page.getByText(/\d (short|over)$/).count()).toBe(0);
    expect(app.complaints).toEqual([]);
  });
});
