import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { routeAt } from '../../src/web/routes.ts';
import { axeInAllLooks } from './axe-in-all-looks.ts';
import { allRecords } from './book-records.ts';
import { applyTextSpacing, type OpenedApp, openApp, reflowAt320 } from './harness.ts';
import { BOARD_PATHS, FORM_PATHS, TASK_PATHS } from './screens.ts';

/**
 * Every screen with the demo season, opened once: axe in both colour schemes at three widths,
 * sideways scroll with and without wide text spacing (WCAG 1.4.10 and 1.4.12), the size of what is
 * tapped, its title and main heading, and that each link leads to a page.
 */

/** Screens about records: `{payment}` is the id of the book's last one. */
const RECORD_PATHS = [
  '/records/{handover}',
  '/records/{stall-close}',
  '/records/{delivery}',
  '/records/{void}',
  ...['handover', 'payment', 'stall-close', 'shareout', 'stall', 'delivery'].map(
    (kind) => `/records/{${kind}}/edit`,
  ),
  '/count/{count}',
];

/** Pages as links lead to them, and addresses where there is nothing. */
const OTHER_PATHS = [
  '/places/families?show=money',
  '/accounts/money/overshort',
  '/accounts/stock/stockroom?product=mint-tea',
  '/add/handover?seller=ada',
  '/add/payment?seller=ada',
  '/add/shareout?pool=stall:nothing',
  '/find?text=ada&gone=yes',
  '/records/none',
  '/no-such-page',
];

/** What is too low to tap, with its height; a link within a sentence is as high as its line. */
function tooSmall(): string[] {
  const field = 'input:not([type=checkbox], [type=radio])';
  const main = `.verbs a, .button, .menu-button ~ .pages a, .place-card, .kind, .chip-button,
    .record-form :is(${field}, select, textarea)`;
  const all = 'main button, main input, main select, main textarea, main summary';
  return [...document.querySelectorAll(`${main}, ${all}`)]
    .filter((element) => element.checkVisibility())
    .map((element) => ({ element, height: element.getBoundingClientRect().height }))
    .filter(({ element, height }) => height < (element.matches(main) ? 43.5 : 23.5))
    .map(({ element, height }) => `${Math.round(height)} px: ${element.outerHTML.slice(0, 100)}`);
}

/** Links into the app whose address no screen has. */
async function deadLinks({ page, origin }: OpenedApp): Promise<string[]> {
  // A link within the page, like the skip link, leads nowhere else.
  const all = await page.evaluate(() =>
    [...document.links]
      .filter((link) => !link.getAttribute('href')?.startsWith('#'))
      .map((link) => link.href),
  );
  const own = all.map((link) => new URL(link)).filter((url) => url.origin === origin);
  const paths = own.map((url) => url.pathname).filter((path) => !path.startsWith('/api/'));
  return [...new Set(paths)].filter((path) => routeAt(path) === undefined);
}

describe('every screen', () => {
  let app: OpenedApp;
  const ids = new Map<string, string>();

  beforeAll(async () => {
    app = await openApp({ book: 'demo' });
    for (const { kind, id } of await allRecords(app)) ids.set(kind, id);
  });
  afterAll(() => app.close());

  it.each([...BOARD_PATHS, ...TASK_PATHS, ...FORM_PATHS, ...RECORD_PATHS, ...OTHER_PATHS])(
    '%s: axe, 320 px, spacing, taps, headings, links',
    async (path) => {
      const { page } = app;
      await app.goto(path.replace(/\{(.+)\}/, (_whole, kind: string) => ids.get(kind) ?? 'none'));
      expect(await axeInAllLooks(page)).toEqual([]);
      expect(await page.evaluate(tooSmall)).toEqual([]);
      expect(await deadLinks(app)).toEqual([]);
      const headings = await page.getByRole('heading', { level: 1 }).allTextContents();
      expect(headings).toHaveLength(1);
      expect((await page.title()).startsWith(headings[0] ?? '?')).toBe(true);
      expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
      await applyTextSpacing(page);
      expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
      expect(app.complaints).toEqual([]);
    },
  );
});
