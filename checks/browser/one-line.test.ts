import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordsOf, sendRecords } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, PHONE, reflowAt320, WIDE } from './harness.ts';

/** A record in one line: how it is read stands there before Enter, and two readings are asked. */
describe('one line, by keyboard', () => {
  let app: OpenedApp;
  const line = () => app.page.getByRole('combobox', { name: 'What happened' });
  const options = () => app.page.getByRole('option');

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: WIDE });
    await sendRecords(app, {
      kind: 'handover',
      date: '2027-04-02',
      seller: 'ada',
      lines: { honey: 3 },
    });
    await app.goto('/');
  });
  afterAll(() => app.close());

  it('opens with the key /, and comes with the line and examples', async () => {
    const { page } = app;
    await page.keyboard.press('/');
    await page.getByRole('dialog', { name: 'Write it in one line' }).waitFor();
    await line().waitFor();
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.getAttribute('role')))
      .toBe('combobox');
    expect(await page.getByRole('button', { name: /^\w+ out 12 / }).count()).toBe(1);
    expect(await axeFindings(page)).toEqual([]);
  });

  it('shows sentence and balances before Enter, then saves and waits for more', async () => {
    const { page } = app;
    await page.keyboard.type('pay ada 25.50');
    await options().getByText('Payment from Ada M.: $25.50 in cash').waitFor();
    expect(await options().getAttribute('aria-selected')).toBe('true');
    expect(await line().getAttribute('aria-expanded')).toBe('true');
    const effect = page.getByRole('region', { name: 'Balances before and after' });
    await expect.poll(() => effect.textContent()).toContain('$25.50 still to pay');
    await expect
      .poll(() => page.getByRole('status').allTextContents())
      .toContainEqual(expect.stringContaining('Payment from Ada M.: $25.50 in cash'));
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').getByText('Saved').first().waitFor();
    expect(await line().inputValue()).toBe('');
    await expect
      .poll(async () => (await recordsOf(app, 'payment')).at(-1))
      .toMatchObject({
        seller: 'ada',
        cents: 2550,
        tender: 'cash',
        date: '2027-04-03',
      });
  });

  it('asks where two readings are possible, and saves the one that the arrows chose', async () => {
    const { page } = app;
    await page.keyboard.type('ada lleva 2 tea ayer');
    await expect.poll(() => options().count()).toBe(2);
    expect(await page.getByRole('dialog').getByRole('button', { name: 'Save' }).isDisabled()).toBe(
      true,
    );
    const before = (await recordsOf(app, 'handover')).length;
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    const chosen = page.getByRole('option', { selected: true });
    await chosen.getByText('2 Mint tea').waitFor();
    expect(await line().getAttribute('aria-activedescendant')).toBe(
      await chosen.getAttribute('id'),
    );
    expect(await axeFindings(page)).toEqual([]);
    expect(await recordsOf(app, 'handover')).toHaveLength(before);
    await page.keyboard.press('Enter');
    await expect.poll(() => line().inputValue()).toBe('');
    await expect
      .poll(async () => (await recordsOf(app, 'handover')).at(-1))
      .toMatchObject({
        date: '2027-04-02',
        lines: { 'tea-mint': 2 },
      });
  });

  it('names a word that it does not know, and what is missing', async () => {
    const { page } = app;
    await page.keyboard.type('ada out 2 hony');
    await page.getByText('“hony” is not known. The nearest known word is “honey”.').waitFor();
    expect(await options().count()).toBe(0);
    for (let i = 0; i < 7; i += 1) await page.keyboard.press('Backspace');
    await page.getByText('Still wanted: goods and how many').waitFor();
  });

  it('takes the last one back, and Escape leads back to the page', async () => {
    const { page } = app;
    await page.getByRole('dialog').getByRole('button', { name: 'Undo' }).press('Enter');
    await page
      .getByRole('dialog')
      .getByText(/^Removed: Goods out to Ada M\./)
      .waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
    expect(app.complaints).toEqual([]);
  });

  it('leaves the key / alone where somebody writes', async () => {
    const { page } = app;
    await app.goto('/find');
    await page.getByLabel('Words or amount').focus();
    await page.keyboard.type('a/b');
    expect(await page.getByLabel('Words or amount').inputValue()).toBe('a/b');
    expect(await page.getByRole('dialog').count()).toBe(0);
  });
});

describe('one line, by thumb', () => {
  let app: OpenedApp;
  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: PHONE });
  });
  afterAll(() => app.close());

  it('is one tap away, over the four verbs, and a tap saves a reading', async () => {
    const { page } = app;
    await page.getByRole('button', { name: 'One line' }).click();
    await page.getByRole('combobox', { name: 'What happened' }).fill('ada 12 honey');
    expect((await reflowAt320(page)).overflow).toBe(0);
    await page.getByRole('option', { name: 'Goods back from Ada M.' }).click();
    await page.getByRole('dialog').getByText('Saved').first().waitFor();
    await expect
      .poll(async () => (await recordsOf(app, 'return')).at(-1))
      .toMatchObject({
        seller: 'ada',
        lines: { honey: 12 },
      });
    expect(app.complaints).toEqual([]);
  });

  it('has targets of 44 px in the row of shortcuts, that hide nothing of the verbs', async () => {
    await app.goto('/');
    const box = async (name: string, role: 'link' | 'button') =>
      (await app.page.getByRole(role, { name }).first().boundingBox()) ?? { y: 0, height: 0 };
    const owed = await box('Still to pay', 'link');
    const verb = await box('Goods out', 'link');
    expect(owed.height).toBeGreaterThanOrEqual(44);
    expect(owed.y + owed.height).toBeLessThanOrEqual(verb.y + 1);
  });
});
