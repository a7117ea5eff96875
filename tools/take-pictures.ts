import { mkdirSync } from 'node:fs';
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

/**
 * Pictures of the app. Without a folder, the readme's two of the board; with one, every screen at a
 * phone's and a desk's width and as it prints, for a person to look through:
 *
 *     node tools/take-pictures.ts
 *     node tools/take-pictures.ts FOLDER [demo|large|empty] [WORD IN THE ADDRESS]
 */
const [folder, book = 'demo', only = ''] = process.argv.slice(2);
if (folder === undefined) await takeForReadme(join(import.meta.dirname, '..', 'docs'));
else await takeAll(folder);
await (await launchedBrowser()).close();

async function takeForReadme(docs: string): Promise<void> {
  for (const [name, viewport] of [
    ['board', WIDE],
    ['board-phone', PHONE],
  ] as const) {
    const app = await openApp({ book: 'demo', viewport });
    await app.page.getByRole('heading', { name: 'Places' }).waitFor();
    await app.page.screenshot({ path: join(docs, `${name}.png`) });
    await app.close();
  }
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
