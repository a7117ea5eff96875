import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordsOf, sendRecords } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, PHONE, reflowAt320 } from './harness.ts';

/** 12 honey keyed as 21: the count is over, the slip is named, taken in one step, and undone. */
describe('why a count does not agree', () => {
  let app: OpenedApp;
  let handover = '';
  let count = '';
  const OVER = /Stockroom: .*honey.*9 over/is;

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: PHONE });
    const on = { date: '2027-04-03' };
    const [, out, counted] = await sendRecords(
      app,
      { ...on, kind: 'delivery', lines: { honey: 24 } },
      { ...on, kind: 'handover', seller: 'linnea', lines: { honey: 21 }, slip: 'D990' },
      { ...on, kind: 'count', lines: { honey: 12, jam: 6, 'tea-mint': 9 } },
    );
    handover = out ?? '';
    count = counted ?? '';
    await app.goto(`/count/${count}`);
  });
  afterAll(() => app.close());

  it('opens from the count with its figures, and names the record first', async () => {
    const { page } = app;
    await page.getByRole('link', { name: 'Why?' }).click();
    await page.getByRole('heading', { name: 'Why?', level: 1 }).waitFor();
    const first = page.locator('.cause').first();
    await first.getByText(/says 21 .*honey; 12 would make it agree\..*D990/is).waitFor();
    expect(await page.getByRole('list', { name: 'Differences' }).innerText()).toMatch(OVER);
    expect(await first.innerText()).toMatch(/likely, (over )?\d+ %/i);
    const concerned = first.getByRole('list', { name: 'Records concerned' });
    expect(await concerned.getByRole('link').getAttribute('href')).toBe(`/records/${handover}`);
    expect(await first.getByRole('list', { name: /before and after/i }).innerText()).toMatch(
      /Stockroom: .*honey\s+3 units[\s\S]*12 units/i,
    );
    expect(await axeFindings(page)).toEqual([]);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
  });

  it('takes it with the keyboard as an edit that can be undone', async () => {
    const { page } = app;
    await page
      .getByRole('button', { name: /^Take this/ })
      .first()
      .focus();
    await page.keyboard.press('Enter');
    await page.getByText('What was seen agrees with the book.').waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('taken');
    const edit = (await recordsOf(app, 'handover')).at(-1);
    expect(edit).toMatchObject({ replaces: handover, lines: { honey: 12 }, slip: 'D990' });
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Undo this change' }).click();
    await page
      .getByRole('list', { name: 'Differences' })
      .getByText(/9 over/)
      .waitFor();
    await page.getByText('Taken, and written').waitFor({ state: 'detached' });
    expect((await recordsOf(app, 'handover')).at(-1)?.lines).toEqual({ honey: 21 });
  });

  it('asks what a family says, and keeps what was typed in the address', async () => {
    const { page } = app;
    await app.goto('/families/bergstrom');
    await page.getByRole('link', { name: /says otherwise/ }).click();
    const linnea = page.getByRole('region', { name: /^Linnea B/ });
    const row = linnea.getByRole('row', { name: /honey/i });
    const said = String(Number(await row.getByRole('cell').first().textContent()) - 9);
    await linnea.getByLabel(/honey, units seen/i).fill(said);
    await page.keyboard.press('Enter');
    const first = page.locator('.cause').first();
    await first.getByText(/says 21 .*honey; 12 would make it agree/is).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('found');
    await first.getByRole('list', { name: 'Records concerned' }).getByRole('link').click();
    await page.goBack();
    expect(await linnea.getByLabel(/honey, units seen/i).inputValue()).toBe(said);
    await first.waitFor();
  });

  it('says plainly where nothing fits, and what to do', async () => {
    const { page } = app;
    await app.goto('/places/stockroom');
    await page.getByRole('link', { name: /why\?/ }).click();
    await page.getByRole('button', { name: 'Look for causes' }).click();
    await page.getByRole('alert').getByText('Write at least one figure').waitFor();
    await page.getByLabel('Strawberry jam, units seen').fill('13');
    await page.getByLabel('Mint tea, units seen').fill('2');
    await page.keyboard.press('Enter');
    await page.getByText('Nothing single explains this.').waitFor();
    await page.getByText(/Count again before anything is changed|To decide, look/).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
  });

  it('adds what is missing for a bank balance, and Undo on top takes it back', async () => {
    const { page } = app;
    await app.goto('/places/bank');
    await page.getByRole('link', { name: /why\?/ }).click();
    const hint = await page.getByText(/^By the book: \$/).textContent();
    const book = Number(/[\d.]+/.exec(hint ?? '')?.[0]);
    await page.getByLabel('Balance of the bank').fill((book - 3.5).toFixed(2));
    await page.keyboard.press('Enter');
    const differs = page.getByRole('list', { name: 'Differences' });
    await differs.getByText('$3.50 less than in the book').waitFor();
    const first = page.locator('.cause').first();
    expect(await first.textContent()).toMatch(/Not in the book: Bank fee.*\$3\.50/);
    await first.getByRole('button', { name: /^Take this/ }).click();
    await page.getByText('What was seen agrees with the book.').waitFor();
    await page.getByRole('heading', { name: 'Taken, and written into the book' }).waitFor();
    expect((await recordsOf(app, 'bank-fee')).at(-1)).toMatchObject({ cents: 350 });
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await differs.getByText('$3.50 less than in the book').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
  });

  it('asks why a stall is short from the stall, and looks through its own settling', async () => {
    const { page } = app;
    const [close] = (await recordsOf(app, 'stall-close')).slice(-1);
    const { id = '', at: _at, ...said } = close ?? {};
    const cash = (close?.cash ?? 0) - (close?.float ?? 0);
    await sendRecords(app, { ...said, cash, tally: undefined, replaces: id });
    await app.goto(`/stalls/${close?.stall}`);
    const why = page.getByRole('link', { name: 'Why?' }).first();
    await why.click();
    const differs = page.getByRole('list', { name: 'Differences' });
    await differs.getByText(/^Short and over at stalls/).waitFor();
    const causes = page.locator('.cause');
    await causes.first().waitFor();
    const found = await causes.allInnerTexts();
    expect(found[0]).toMatch(/Stall/);
    expect(found.every((text) => /stall/i.test(text))).toBe(true);
    expect(await axeFindings(page)).toEqual([]);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
  });

  it('is one tap from the closing list', async () => {
    const { page } = app;
    await app.goto('/closing');
    const why = page.getByRole('link', { name: 'Why?' }).first();
    expect(await why.getAttribute('href')).toMatch(/^\/why\?/);
    expect(app.complaints).toEqual([]);
  });
});
