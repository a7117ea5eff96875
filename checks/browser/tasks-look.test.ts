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
  '/count/LAST',
];

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

describe('the task screens', () => {
  let app: OpenedApp;
  let lastCount: string;

  beforeAll(async () => {
    app = await openApp({ book: 'demo' });
    lastCount = (await recordsOf(app, 'count')).at(-1)?.id ?? '';
  });
  afterAll(() => app.close());

  it.each(PATHS)('%s: axe, 320 px, text spacing, sizes to tap', async (path) => {
    const { page } = app;
    await app.goto(path.replace('LAST', lastCount));
    await page.getByRole('heading', { level: 1 }).waitFor();
    for (const [colorScheme, size] of LOOKS) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize(size);
      expect(await axeFindings(page)).toEqual([]);
    }
    expect(await page.evaluate(tooSmall)).toEqual([]);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
    await applyTextSpacing(page);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
    expect(app.complaints).toEqual([]);
  });
});
