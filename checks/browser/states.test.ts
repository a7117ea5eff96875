import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeInAllLooks } from './axe-in-all-looks.ts';
import { recordsOf, sendRecords } from './book-records.ts';
import { hiddenByFixedBars } from './focus-seen.ts';
import {
  applyTextSpacing,
  axeFindings,
  type OpenedApp,
  openApp,
  PHONE,
  press,
  reflowAt320,
  WIDE,
} from './harness.ts';

/**
 * The states that a screen can be in, each looked at: empty, first run, loading, offline, wrong,
 * closed, printed, dark, twice the text, in forced colours, without motion, and by keyboard.
 */
const MAIN_PATHS = [
  '/',
  '/places/stockroom',
  '/families',
  '/families/bergstrom',
  '/stalls',
  '/stalls/garden-0327',
  '/add',
  '/add/handover',
  '/add/payment',
  '/count',
  '/match/debits',
  '/prizes',
  '/closing',
  '/set-up',
] as const;

const EMPTY_PATHS = [
  ...['/places/stockroom', '/families', '/stalls', '/count', '/add/handover', '/products'],
  ...['/prizes', '/closing', '/match/debits'],
];

/** Figures in the colour of a meaning that have neither shape nor mark, nor stand beside one. */
function coloursWithoutSign(): string[] {
  const meanings = '.figure-goods, .figure-money, .figure-difference, .state-open, .phone-held';
  return [...document.querySelectorAll(`main :is(${meanings})`)]
    .filter((element) => !/[▲✓○]/.test(element.textContent ?? ''))
    .filter((element) => !element.matches('.shape, .sum-bar'))
    .filter((element) => element.querySelector('.shape') === null)
    .map((element) => element.outerHTML.slice(0, 100));
}

const heading = (app: OpenedApp) => app.page.getByRole('heading', { level: 1 });

/** axe in all looks, and no sideways scroll with wide spacing either. */
async function looksRight({ page }: OpenedApp, where: string): Promise<void> {
  expect([where, await axeInAllLooks(page)]).toEqual([where, []]);
  await applyTextSpacing(page);
  expect([where, await reflowAt320(page)]).toEqual([where, { overflow: 0, widest: [] }]);
}

describe('a new book', () => {
  let app: OpenedApp;
  beforeAll(async () => {
    app = await openApp({ book: 'none' });
  });
  afterAll(() => app.close());

  it('first run: four questions, what is missing, then the board with first steps', async () => {
    const { page } = app;
    await heading(app).getByText('Start a book').waitFor();
    await press(page, 'Start an empty season');
    await page.getByRole('alert').waitFor();
    await looksRight(app, 'four questions');
    await page.getByLabel('What is the group called?').fill('Wrenfield Young Rowers');
    await page.getByLabel('What is the season called?').fill('Spring 2028');
    await page.getByLabel('Last day').fill('2030-04-30');
    await press(page, 'Start an empty season');
    const steps = page.getByRole('region', { name: 'First steps' });
    await steps.getByText('✓ done').waitFor();
    const now = steps.locator('[aria-current=step]');
    expect(await now.textContent()).toBe('Products and prices');
    await looksRight(app, 'first steps');
  });

  it('empty: every main screen says what to do', async () => {
    for (const path of EMPTY_PATHS) {
      await app.goto(path);
      await heading(app).waitFor();
      expect([path, await axeFindings(app.page)]).toEqual([path, []]);
      expect([path, (await reflowAt320(app.page)).overflow]).toEqual([path, 0]);
    }
    expect(app.complaints).toEqual([]);
  });
});

describe('a book in use', () => {
  let app: OpenedApp;
  beforeAll(async () => {
    app = await openApp({ book: 'demo' });
  });
  afterAll(() => app.close());

  it('pictures have a name with the main number, and a table behind', async () => {
    const { page } = app;
    await app.goto('/places/stockroom');
    const stock = page.getByRole('figure', { name: /^15 units in the stockroom now; 712 deliv/ });
    await stock.getByText('The same as a table').click();
    const rows = stock.getByRole('row');
    expect(await rows.last().textContent()).toMatch(/15$/);
    await looksRight(app, 'stock by week');
    await app.goto('/match/debits');
    const bank = page.getByRole('figure', { name: /^\$530\.90 on the account now/ });
    await bank.getByText('The same as a table').click();
    expect(await axeFindings(page)).toEqual([]);
    await app.goto('/families/bergstrom');
    await page.getByRole('figure', { name: 'Otto B.: 28 units sold of 40, 12 to go.' }).waitFor();
    await app.goto('/');
    await page.getByText('The same as tables').click();
    await page.getByRole('table', { name: 'Owed or earned' }).waitFor();
    await page.getByRole('figure', { name: '712 units in = 712 accounted for' }).waitFor();
    await looksRight(app, 'places adding up');
  });

  it('twice the text: nothing scrolls sideways on a desk or a phone', async () => {
    const wide: string[] = [];
    // The reader's own size of text, which also decides which layout is taken.
    const page = await app.context.newPage();
    const browser = await app.context.newCDPSession(page);
    await browser.send('Page.setFontSizes', { fontSizes: { standard: 32 } });
    for (const path of MAIN_PATHS) {
      await page.goto(app.origin + path);
      await page.getByRole('heading', { level: 1 }).waitFor();
      for (const size of [WIDE, PHONE]) {
        await page.setViewportSize(size);
        const [over, text] = await page.evaluate(() => {
          const root = document.documentElement;
          return [root.scrollWidth - root.clientWidth, getComputedStyle(root).fontSize];
        });
        expect(text).toBe('34px');
        if (over > 0) wide.push(`${path} at ${size.width}: ${over} px`);
      }
    }
    await page.close();
    expect(wide).toEqual([]);
  });

  it('focus is never below a fixed bar, and nothing moves', async () => {
    const hidden: string[] = [];
    for (const path of MAIN_PATHS) {
      await app.goto(path);
      await heading(app).waitFor();
      await app.page.setViewportSize(PHONE);
      hidden.push(...(await hiddenByFixedBars(app.page)).map((what) => `${path}: ${what}`));
      const moving = await app.page.evaluate(() =>
        document
          .getAnimations()
          .map((each) => (each instanceof CSSAnimation ? each.animationName : '')),
      );
      expect([path, moving]).toEqual([path, []]);
    }
    expect(hidden).toEqual([]);
  });

  it('a colour with a meaning never stands without its sign', async () => {
    const bare: string[] = [];
    for (const path of MAIN_PATHS) {
      await app.goto(path);
      await heading(app).waitFor();
      const found = await app.page.evaluate(coloursWithoutSign);
      bare.push(...found.map((what) => `${path}: ${what}`));
    }
    expect(bare).toEqual([]);
  });

  it('in forced colours what is chosen and what is drawn is still told apart', async () => {
    const { page } = app;
    await page.emulateMedia({ forcedColors: 'active' });
    await app.goto('/add/payment');
    const look = (selector: string, property: string) =>
      page
        .locator(selector)
        .first()
        .evaluate((element, name) => {
          return getComputedStyle(element).getPropertyValue(name);
        }, property);
    const chosen = await look('.chip input:checked + span', 'background-color');
    expect(chosen).not.toBe(await look('.chip input:not(:checked) + span', 'background-color'));
    await app.goto('/places/stockroom');
    await page.locator('.drawn-full').first().waitFor();
    const ground = await look('body', 'background-color');
    expect(await look('.drawn-full', 'fill')).not.toBe(ground);
    expect(await look('.drawn-hollow', 'stroke')).not.toBe(ground);
    await page.emulateMedia({ forcedColors: 'none' });
  });

  it('printed: black on white, without bars and buttons', async () => {
    const { page } = app;
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    const seen: string[] = [];
    for (const path of MAIN_PATHS) {
      await app.goto(path);
      await heading(app).waitFor();
      const left = await page.evaluate(() =>
        [...document.querySelectorAll('.head, .verbs, .shortcuts, main button, main .button')]
          .filter((element) => element.checkVisibility())
          .map((element) => element.outerHTML.slice(0, 80)),
      );
      seen.push(...left.map((what) => `${path}: ${what}`));
      const colours = await page.evaluate(() => {
        const { color, backgroundColor } = getComputedStyle(document.body);
        return [color, backgroundColor];
      });
      expect(colours).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
    }
    await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
    expect(seen).toEqual([]);
  });

  it('wrong: a page that stops says what to do, and the others go on', async () => {
    const { page } = app;
    await app.goto('/families');
    await page.evaluate(() => Reflect.set(Map, 'groupBy', undefined));
    await press(page, 'Menu');
    await press(page, 'Stalls');
    await heading(app).getByText('This page stopped working').waitFor();
    await page.getByText('All that was saved is safe. Load the app again.').waitFor();
    await looksRight(app, 'wrong');
    await app.page.setViewportSize(PHONE);
    await press(page, 'Count');
    await heading(app).getByText('Count').waitFor();
    await page.evaluate(() => void Promise.reject(new Error('a made-up fault')));
    const alert = page.getByRole('alert');
    await alert.getByText('All that was saved is safe. Load the app again.').waitFor();
    await press(page, 'Load it again');
    await page.waitForLoadState('networkidle');
    await heading(app).getByText('Count').waitFor();
    expect(await alert.count()).toBe(0);
    app.complaints.length = 0;
  });

  it('offline: one line says so, and what is saved is safe', async () => {
    const { page, context } = app;
    await app.goto('/add/bank-fee');
    await context.setOffline(true);
    await page.getByLabel('Amount').fill('2.50');
    await press(page, 'Save');
    await page.getByRole('status').getByText('Saved on this phone').waitFor();
    await page.getByRole('link', { name: '1 record saved on this phone' }).waitFor();
    await looksRight(app, 'offline');
    await context.setOffline(false);
    await page.evaluate(() => dispatchEvent(new Event('online')));
    await page.getByRole('status').getByText('Saved', { exact: true }).waitFor();
    app.complaints.length = 0;
  });

  it('closed: every page says that it is read-only, and how a late record is kept', async () => {
    const { page } = app;
    const { id, at: _at, by: _by, ...season } = (await recordsOf(app, 'season')).at(-1) ?? {};
    const closed = { date: '2027-04-18', second: 'Sam Winter', reason: 'The rest is written off' };
    await sendRecords(app, { ...season, replaces: id, closed });
    for (const path of ['/', '/add/payment', '/set-up/season']) {
      await app.goto(path);
      await page.getByRole('link', { name: 'Closed on 18 Apr 2027' }).waitFor();
    }
    await looksRight(app, 'closed');
    expect(app.complaints).toEqual([]);
  });
});
