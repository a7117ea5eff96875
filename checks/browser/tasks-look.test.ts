import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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

/** Every task screen with the demo season: axe, sideways scroll, and the size of what is tapped. */
const PATHS = [
  '/families',
  '/families/bergstrom',
  '/statements',
  '/stalls',
  '/stalls/market-0213',
  '/count',
  '/set-up',
  '/set-up/season',
  '/set-up/paste',
  '/set-up/families',
  '/set-up/sellers',
  '/set-up/hosts',
  '/set-up/neighbours',
  '/set-up/stalls',
  '/set-up/prize-steps',
  '/set-up/proceeds',
  '/set-up/holds',
  '/products',
  '/prizes',
  '/closing',
  '/closing/close',
];

/** Twenty-two pages one after the other take a while on a busy machine. */
const PATIENCE = { timeout: 400_000 };

describe('the task screens', () => {
  let app: OpenedApp;

  beforeAll(async () => {
    app = await openApp({ book: 'demo' });
    const count = (await recordsOf(app, 'count')).at(-1);
    PATHS.push(`/count/${count?.id ?? ''}`);
  });
  afterAll(() => app.close());

  it.each([
    ['light', NARROW],
    ['light', WIDE],
    ['dark', PHONE],
  ] as const)('axe finds nothing on any of them, %s at %o', PATIENCE, async (colorScheme, size) => {
    await app.page.emulateMedia({ colorScheme });
    await app.page.setViewportSize(size);
    for (const path of PATHS) {
      await app.goto(path);
      await app.page.getByRole('heading', { level: 1 }).waitFor();
      expect([path, await axeFindings(app.page)]).toEqual([path, []]);
    }
  });

  it(
    'does not scroll sideways at 320 px, also with the text spacing of WCAG 1.4.12',
    PATIENCE,
    async () => {
      for (const path of PATHS) {
        await app.goto(path);
        await app.page.getByRole('heading', { level: 1 }).waitFor();
        expect([path, await reflowAt320(app.page)]).toEqual([path, { overflow: 0, widest: [] }]);
        await applyTextSpacing(app.page);
        expect([path, await reflowAt320(app.page)]).toEqual([path, { overflow: 0, widest: [] }]);
      }
    },
  );

  it('has buttons of 44 px, and nothing to tap below 24 px (WCAG 2.5.8)', PATIENCE, async () => {
    await app.page.setViewportSize(PHONE);
    for (const path of PATHS) {
      await app.goto(path);
      await app.page.getByRole('heading', { level: 1 }).waitFor();
      const small = await app.page.evaluate(() =>
        [...document.querySelectorAll('main button, main input, main select, main summary')]
          .filter((element) => element.checkVisibility())
          .map((element) => {
            const { height } = element.getBoundingClientRect();
            const least = element.classList.contains('button') ? 43.5 : 23.5;
            return height < least ? `${element.outerHTML.slice(0, 90)}: ${height}` : '';
          })
          .filter((found) => found !== ''),
      );
      expect([path, small]).toEqual([path, []]);
    }
    expect(app.complaints).toEqual([]);
  });
});
