import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  BOOK,
  launchedBrowser,
  NARROW,
  type OpenedApp,
  type OpenOptions,
  openApp,
  PHONE,
  WIDE,
} from '../checks/browser/harness.ts';
import { BOARD_PATHS, FORM_PATHS, recordPaths, TASK_PATHS } from '../checks/browser/screens.ts';
import { makeSeason } from '../simulation/season-maker.ts';
import { writeBook } from '../src/intake/write-book.ts';
import { smallPng } from './small-png.ts';

/**
 * Pictures of the app. Without a folder, docs: every screen at a desk's and a phone's width as a
 * small picture with an index, and the readme's three, or only some screens anew; with one, every
 * screen in full and as it prints, for a person to look through:
 *
 *     node tools/take-pictures.ts
 *     node tools/take-pictures.ts --only ADDRESS…
 *     node tools/take-pictures.ts FOLDER [demo|large|empty] [WORD IN THE ADDRESS]
 */
/** The part of a long page that a picture in docs shows, in CSS pixels. */
const SHOWN = { wide: 1100, phone: 1300 };
const INDEX_HEAD = `# Every screen

The made-up season, at 1280 and at 390 pixels; of a long page the upper part. Made by
\`node tools/take-pictures.ts\`.

| screen | at a desk | on a phone |
| --- | --- | --- |
`;
/** Names in Chinese are drawn with the papers' own letters, as a bare machine has none. */
const LETTERS = join(import.meta.dirname, '../node_modules/@expo-google-fonts/noto-sans-sc');
const UUID = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/;
const HOME = join(import.meta.dirname, '..');
const [folder, book = 'demo', only = ''] = process.argv.slice(2);
const anew = folder === '--only' ? process.argv.slice(3) : undefined;
const fonts = mkdtempSync(join(tmpdir(), 'cratebook-fonts-'));
symlinkSync(join(LETTERS, '400Regular'), join(fonts, 'fonts'));
process.env.XDG_DATA_HOME = fonts;
if (folder === undefined || anew !== undefined) {
  const docs = join(HOME, 'docs');
  if (anew === undefined) await takeForReadme(docs);
  await takeForDocs(docs, anew);
} else await takeAll(folder);
await (await launchedBrowser()).close();
rmSync(fonts, { recursive: true, force: true });

/** What the readme shows: where everything is, why it does not agree, and a stall in the hand. */
async function takeForReadme(docs: string): Promise<void> {
  await takeOne(join(docs, 'board.png'), '/', WIDE, ({ page }) =>
    page.locator('.attention-items').waitFor(),
  );
  await takeOne(join(docs, 'why.png'), '/', WIDE, async ({ page }) => {
    await page.locator('.attention-items').getByRole('link', { name: 'Why?' }).first().click();
    await page.locator('li.cause').first().waitFor();
  });
  await takeOne(
    join(docs, 'sell-phone.png'),
    '/stalls/garden-0327/sell',
    PHONE,
    async ({ page }) => {
      for (const product of ['Wildflower honey', 'Wildflower honey', 'Mint tea']) {
        await page.getByRole('button', { name: product }).first().click();
      }
      await page.evaluate(() => scrollTo(0, 0));
    },
  );
}

async function takeOne(
  to: string,
  path: string,
  viewport: typeof WIDE | typeof PHONE,
  prepare: (app: OpenedApp) => Promise<void>,
): Promise<void> {
  const app = await openApp({ book: 'demo', viewport, path });
  await prepare(app);
  await app.page.screenshot({ path: to, animations: 'disabled' });
  await app.close();
}

/** @param anew the addresses to take again; every screen without */
async function takeForDocs(docs: string, anew: readonly string[] | undefined): Promise<void> {
  const into = join(docs, 'screens');
  if (anew === undefined) rmSync(into, { recursive: true, force: true });
  mkdirSync(into, { recursive: true });
  const app = await openApp({ book: 'demo', viewport: WIDE });
  const rows: string[] = [];
  for (const path of [...BOARD_PATHS, ...TASK_PATHS, ...FORM_PATHS, ...(await recordPaths(app))]) {
    await app.goto(path);
    await app.page.locator('main h1').waitFor();
    const title = (await app.page.locator('main h1').textContent()) ?? '';
    const name = fileName(path);
    if (anew?.includes(path) !== false) await takeSmall(app, join(into, name));
    const image = (suffix: string, width: number) =>
      `<a href="screens/${name}-${suffix}.png"><img src="screens/${name}-${suffix}.png" ` +
      `width="${width}" alt="${title}, ${suffix}"></a>`;
    rows.push(
      `| ${title}<br>\`${addressOf(path)}\` | ${image('wide', 380)} | ${image('phone', 130)} |`,
    );
  }
  await app.close();
  const index = join(docs, 'screens.md');
  writeFileSync(index, `${INDEX_HEAD}${rows.join('\n')}\n`);
  const inForm = ['node_modules/.bin/biome', 'format', '--write', index];
  execFileSync(process.execPath, inForm, { cwd: HOME });
}

/** @param to the pictures' name without the width and the ending */
async function takeSmall(app: OpenedApp, to: string): Promise<void> {
  for (const [suffix, viewport] of [
    ['wide', WIDE],
    ['phone', PHONE],
  ] as const) {
    await app.page.setViewportSize({ ...viewport, height: SHOWN[suffix] });
    const picture = await app.page.screenshot({ animations: 'disabled' });
    writeFileSync(`${to}-${suffix}.png`, smallPng(picture));
  }
  await app.page.setViewportSize(WIDE);
}

function fileName(path: string): string {
  const parts = path
    .slice(1)
    .replace(UUID, 'ID')
    .replace(/[^\w-]+/g, '_');
  const kind = UUID.exec(path)?.[0].slice(-4) ?? '';
  return `${parts || 'board'}${kind && `-${kind}`}`;
}

function addressOf(path: string): string {
  return path.replace(UUID, 'ID');
}

async function takeAll(into: string): Promise<void> {
  mkdirSync(into, { recursive: true });
  const start: OpenOptions['book'] = book === 'demo' || book === 'empty' ? book : 'none';
  const app = await openApp({ book: start, viewport: WIDE });
  if (book === 'large') await importLarge(app);
  const records = book === 'empty' ? [] : await recordPaths(app);
  const all = [...BOARD_PATHS, ...TASK_PATHS, ...FORM_PATHS, ...records];
  for (const path of all.filter((each) => each.includes(only))) {
    await app.goto(path);
    const name = path.slice(1).replace(/[^\w-]+/g, '_') || 'board';
    for (const [suffix, viewport] of [
      ['wide', WIDE],
      ['phone', PHONE],
    ] as const) {
      await app.page.setViewportSize(viewport);
      await app.page.screenshot({ path: join(into, `${name}-${suffix}.png`), fullPage: true });
    }
    await app.page.setViewportSize(WIDE);
    await app.page.pdf({ path: join(into, `${name}.pdf`), format: 'A4' });
    for (const width of [NARROW.width, PHONE.width, WIDE.width])
      await tellOverflow(app, path, width);
  }
  for (const complaint of app.complaints) process.stdout.write(`${complaint}\n`);
  await app.close();
}

/** A page that scrolls sideways is told; looking at pictures alone could miss it. */
async function tellOverflow(app: OpenedApp, path: string, width: number): Promise<void> {
  await app.page.setViewportSize({ width, height: 800 });
  const over = await app.page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  if (over > 0) process.stdout.write(`${path}: ${over} px too wide at ${width} px\n`);
  await app.page.setViewportSize(WIDE);
}

/** A made season of a large group: 45 families with some 60 sellers, 40 products. */
async function importLarge(app: OpenedApp): Promise<void> {
  const shape = { families: 45, products: 40, days: 63, actsADay: 30, changesPercent: 3 };
  const header = { book: 'cratebook/1', ...BOOK } as const;
  const text = [...writeBook(header, makeSeason(1, shape))].join('');
  const status = await app.page.evaluate(async (body) => {
    const headers = { 'Content-Type': 'application/jsonl' };
    const path = '/api/books/wrenfield/spring-2027/file';
    return (await fetch(path, { method: 'POST', body, headers })).status;
  }, text);
  if (status >= 300) throw new Error(`The large book was not taken: ${status}`);
}
