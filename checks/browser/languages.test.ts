import { afterAll, beforeAll, expect, it } from 'vitest';
import { movementKinds, setupKinds } from '../../src/records/record.ts';
import { recordsOf } from './book-records.ts';
import { type OpenedApp, openApp } from './harness.ts';
import { dataTexts, speakMarked, textsShown, unmarked } from './marked-words.ts';
import { BOARD_PATHS, FORM_PATHS, recordPaths, TASK_PATHS } from './screens.ts';

let app: OpenedApp;

beforeAll(async () => {
  app = await openApp({ locale: 'es-MX' });
});
afterAll(() => app.close());

it('begins in the language of the browser, and says so to who reads it out', async () => {
  await app.goto('/families');
  await expect.poll(title, PATIENT).toBe('Familias');
  expect(await app.page.evaluate(() => document.documentElement.lang)).toBe('es');
  expect(await app.page.locator('main').textContent()).toMatch(/\$[\d,]+\.\d\d por pagar/);
});

it('stays in the language that was chosen on this device', async () => {
  await app.page.getByRole('button', { name: '简体中文' }).click();
  await expect.poll(title, PATIENT).toBe('家庭');
  await app.goto('/closing');
  expect(await app.page.evaluate(() => document.documentElement.lang)).toBe('zh-Hans');
  await expect.poll(title, PATIENT).toBe('结束清单');
  await app.page.getByRole('button', { name: 'Español' }).click();
  await expect.poll(title, PATIENT).toBe('Lista de cierre');
});

it('says no text in English on any screen, but for what people wrote', async () => {
  await inMarkedWords();
  const data = dataTexts(await everyRecord());
  const left: string[] = [];
  const paths = [...BOARD_PATHS, ...TASK_PATHS, ...FORM_PATHS, ...(await recordPaths(app))];
  paths.push('/phone', '/stalls/garden-0327/sheet/brought', '/stalls/garden-0327/sheet/drop');
  for (const path of paths) {
    await follow(path);
    const texts = await textsShown(app);
    expect(texts.join('')).toMatch(/[Ａ-ｚ]/);
    for (const text of unmarked(texts, data)) left.push(`${path}: ${text.trim()}`);
  }
  expect(left).toEqual([]);
});

it('says what does not fit, and how a line is read, in the language too', async () => {
  await inMarkedWords();
  const { page } = app;
  const data = dataTexts(await everyRecord());
  const left: string[] = [];
  const look = async (where: string): Promise<void> => {
    for (const text of unmarked(await textsShown(app), data)) left.push(`${where}: ${text}`);
  };
  for (const kind of ['payment', 'delivery', 'stall-close', 'season', 'shareout']) {
    await follow(`/add/${kind}`);
    await page.locator('main form .button-main').click();
    await page.getByRole('alert').first().waitFor();
    await look(kind);
  }
  await page.keyboard.press('Escape');
  await follow('/phone');
  await page.locator('[aria-keyshortcuts="/"]').click();
  const line = page.getByRole('combobox');
  for (const written of ['ada out 12 honey', 'ada 12', 'ada out', 'pay ada 9x9', 'back honey']) {
    await line.fill(written);
    await page.locator('.line-told').waitFor({ state: 'attached' });
    data.push(...written.split(' '));
    await look(written);
  }
  expect(left).toEqual([]);
});

it('would find a text that no catalogue knows', async () => {
  await app.goto('/families');
  await app.page.evaluate(() => {
    const made = document.createElement('p');
    made.textContent = 'Still to pay';
    document.querySelector('main')?.append(made);
  });
  expect(unmarked(await textsShown(app), ['Robin Marsh'])).toContain('Still to pay');
});

/** The words come with the app: it has to be loaded once with these. */
async function inMarkedWords(): Promise<void> {
  await speakMarked(app);
  await app.goto('/families');
}

/** Choosing a language loads the app anew. */
const PATIENT = { timeout: 20_000 };

function title(): Promise<string | null> {
  return app.page.locator('h1').textContent();
}

/** Goes there as a link does, without loading anew; a page of the same address is loaded. */
async function follow(path: string): Promise<void> {
  const { page } = app;
  const [to] = path.split('?');
  if (new URL(page.url()).pathname === to) {
    await app.goto(path);
    return;
  }
  await page.evaluate((address) => {
    document.querySelector('h1')?.setAttribute('data-before', '');
    const link = document.createElement('a');
    link.href = address;
    document.body.append(link);
    link.click();
    link.remove();
  }, path);
  await page.locator('h1:not([data-before])').first().waitFor();
  await page.evaluate(() => new Promise((done) => requestIdleCallback(done)));
}

async function everyRecord(): Promise<unknown[]> {
  const kinds = [...movementKinds, ...setupKinds, 'void'] as const;
  const lists = await Promise.all(kinds.map((kind) => recordsOf(app, kind)));
  return lists.flat();
}
