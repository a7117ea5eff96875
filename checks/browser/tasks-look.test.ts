import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { routeAt } from '../../src/web/routes.ts';
import { recordsOf } from './book-records.ts';
import {
  applyTextSpacing,
  axeFindings,
  NARROW,
  type OpenedApp,
  openApp,
  PHONE,
  reflowAt320,
  WIDE,
} from './harness.ts';
import { TASK_PATHS } from './screens.ts';

/**
 * Every task screen with the demo season: axe, sideways scroll, the size of what is tapped, and
 * that each link leads to a page.
 */
/** Both colour schemes, and each width at least once; no page is loaded twice for it. */
const LOOKS = [
  ['light', WIDE],
  ['light', NARROW],
  ['dark', PHONE],
] as const;

/** Buttons, fields and summaries that are too small to tap, with their height in pixels. */
function tooSmall(): string[] {
  return [...document.querySelectorAll('main button, main input, main select, main summary')]
    .filter((element) => element.checkVisibility())
    .map((element) => ({ element, height: element.getBoundingClientRect().height }))
    .filter(({ element, height }) => height < (element.matches('.button') ? 43.5 : 23.5))
    .map(({ element, height }) => `${element.outerHTML.slice(0, 90)}: ${height}`);
}

/** Links into the app whose address no screen has. */
async function deadLinks({ page, origin }: OpenedApp): Promise<string[]> {
  const all = await page.evaluate(() => [...document.links].map((link) => link.href));
  const own = all.map((link) => new URL(link)).filter((url) => url.origin === origin);
  const paths = own.map((url) => url.pathname).filter((path) => !path.startsWith('/api/'));
  return [...new Set(paths)].filter((path) => routeAt(path) === undefined);
}

describe('the task screens', () => {
  let app: OpenedApp;
  let lastCount: string;

  beforeAll(async () => {
    app = await openApp({ book: 'demo' });
    lastCount = (await recordsOf(app, 'count')).at(-1)?.id ?? '';
  });
  afterAll(() => app.close());

  it.each([...TASK_PATHS, '/count/LAST'])('%s: axe, 320 px, spacing, taps, links', async (path) => {
    const { page } = app;
    await app.goto(path.replace('LAST', lastCount));
    await page.getByRole('heading', { level: 1 }).waitFor();
    for (const [colorScheme, size] of LOOKS) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize(size);
      expect(await axeFindings(page)).toEqual([]);
    }
    expect(await page.evaluate(tooSmall)).toEqual([]);
    expect(await deadLinks(app)).toEqual([]);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
    await applyTextSpacing(page);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
    expect(app.complaints).toEqual([]);
  });
});
