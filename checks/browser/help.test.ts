import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { hiddenByFixedBars } from './focus-seen.ts';
import {
  axeFindings,
  NARROW,
  type OpenedApp,
  openApp,
  PHONE,
  press,
  reflowAt320,
} from './harness.ts';

/** Help beside a task, the made-up book it is tried on, and the first closing step by step. */
let app: OpenedApp;
beforeAll(async () => {
  app = await openApp({ book: 'demo', path: '/add/handover' });
});
afterAll(() => app.close());

const recordCount = async () => {
  const answer = await app.api('GET', '/api/books/wrenfield/spring-2027/records?after=0');
  return JSON.stringify(answer).length;
};

it('three sentences and an example beside the task are fetched when they are opened', async () => {
  const { page } = app;
  await page.getByText('How this works').click();
  await page.getByText('A family signs for the goods it takes.').waitFor();
  const example = page.getByRole('region', { name: 'Example with made-up figures' });
  expect(await example.textContent()).toMatch(/Ada M\., still to pay: ?\$31\.00[^$]*\$71\.00/);
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await axeFindings(page)).toEqual([]);
  }
  expect((await reflowAt320(page)).overflow).toBe(0);
});

it('the example is tried and undone in the made-up book, away from the real one', async () => {
  const { page } = app;
  const before = await recordCount();
  await press(page, 'Try it in the made-up season');
  const stripe = page.getByRole('complementary', { name: 'Made-up season' });
  await stripe.waitFor();
  expect(await page.getByLabel('Wildflower honey, singles').inputValue()).toBe('5');
  await page.setViewportSize(NARROW);
  expect(await axeFindings(page)).toEqual([]);
  expect((await reflowAt320(page)).overflow).toBe(0);
  await page.setViewportSize(PHONE);
  await bandIsSeen(stripe);
  expect(await hiddenByFixedBars(page)).toEqual([]);
  await press(page, 'Save');
  const saved = page.getByRole('status');
  await saved.getByText('Goods out to Ada M.: 5 Wildflower honey, $40.00').waitFor();
  await saved.getByRole('button', { name: 'Undo' }).click();
  await saved.getByText('Removed: Goods out to Ada M.').waitFor();
  await stripe.getByRole('button', { name: 'Back to your book' }).click();
  await stripe.waitFor({ state: 'detached' });
  expect(new URL(page.url()).pathname).toBe('/add/handover');
  await page.getByLabel('Mint tea, singles').waitFor();
  expect(await recordCount()).toBe(before);
  expect(app.complaints).toEqual([]);
});

/** The band stays at the top, in stripes, whatever the colours; paper says the words. */
async function bandIsSeen(band: Locator): Promise<void> {
  const page = band.page();
  await band.getByText('Made-up season: nothing here is real.').waitFor();
  await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
  expect((await band.boundingBox())?.y).toBe(0);
  const stripes = () =>
    band.evaluate((it) => {
      const image = getComputedStyle(it).backgroundImage;
      const colours = image.match(/rgb\([^)]+\)|color\([^)]+\)/g) ?? [];
      return [image.startsWith('repeating-linear-gradient(135deg'), new Set(colours).size];
    });
  for (const media of [
    { forcedColors: 'active' },
    { forcedColors: 'none', colorScheme: 'dark' },
    { colorScheme: 'light' },
  ] as const) {
    await page.emulateMedia(media);
    expect([media, await stripes()]).toEqual([media, [true, 2]]);
  }
  await page.emulateMedia({ media: 'print' });
  expect(await band.isVisible()).toBe(true);
  expect(await band.getByText('Back to your book').isVisible()).toBe(false);
  await page.emulateMedia({ media: 'screen' });
}

it('a first closing goes through the real list, one group at a time', async () => {
  const { page } = app;
  await app.goto('/closing');
  await press(page, 'A first closing, step by step');
  const title = page.getByRole('heading', { level: 1 });
  await title.getByText('Goods', { exact: true }).waitFor();
  await page.getByText(/^A first closing, step 1 of \d\.$/).waitFor();
  await page.getByText('Stockroom counted').waitFor();
  await press(page, 'Next step');
  await title.getByText('Families').waitFor();
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Families');
  await page.getByRole('link', { name: 'Open the family, record its payment' }).first().waitFor();
  await app.goto('/closing/first?step=99');
  await title.getByText('Close the season').waitFor();
  expect(await page.getByRole('link', { name: 'Next step' }).count()).toBe(0);
  await press(page, 'Check before closing');
  await title.getByText('Close the season').waitFor();
});
