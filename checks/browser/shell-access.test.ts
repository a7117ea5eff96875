import { afterAll, beforeAll, describe, expect, it } from 'vitest';
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

/** Every screen of the frame in both colour schemes and at three widths: axe, reflow, targets. */

const screens = [
  '/',
  '/places/stockroom',
  '/places/families?show=money',
  '/accounts/money/overshort',
  '/accounts/stock/stockroom?product=mint-tea',
  '/add',
  '/add/handover?seller=ada',
  '/add/payment?seller=ada',
  '/add/delivery',
  '/add/stall-close',
  '/add/shareout?pool=stall:nothing',
  '/add/proceeds',
  '/find?text=ada&gone=yes',
  '/records/none',
  '/no-such-page',
] as const;

/** Records and their edit forms: `{payment}` is the id of one of the book. */
const recordPages = [
  '/records/{handover}',
  '/records/{stall-close}',
  '/records/{stall-close}/edit',
  '/records/{shareout}/edit',
  '/records/{stall}/edit',
  '/records/{delivery}',
];
const paths = [...screens, ...recordPages];

let app: OpenedApp;
const ids = new Map<string, string>();

beforeAll(async () => {
  app = await openApp({ book: 'demo' });
  const answer = (await app.api('GET', '/api/books/wrenfield/spring-2027/records?after=0')) as {
    records: { record: { id: string; kind: string } }[];
  };
  for (const { record } of answer.records) ids.set(record.kind, record.id);
});

afterAll(async () => {
  await app.close();
});

function goto(path: string): Promise<void> {
  return app.goto(path.replace(/\{(.+)\}/, (_whole, kind: string) => ids.get(kind) ?? 'none'));
}

describe.each(['light', 'dark'] as const)(
  'axe in the %s scheme, at three widths',
  (colorScheme) => {
    it.each(paths)('finds nothing on %s', async (path) => {
      await app.page.emulateMedia({ colorScheme });
      await goto(path);
      const found: string[] = [];
      for (const size of [NARROW, PHONE, WIDE]) {
        await app.page.setViewportSize(size);
        found.push(...(await axeFindings(app.page)).map((said) => `${size.width}: ${said}`));
      }
      expect(found).toEqual([]);
    });
  },
);

it('no screen scrolls sideways at 320 px, with the text spacing of WCAG 1.4.12 too', async () => {
  const wide: unknown[] = [];
  for (const path of paths) {
    await goto(path);
    const plain = await reflowAt320(app.page);
    await applyTextSpacing(app.page);
    const spaced = await reflowAt320(app.page);
    if (plain.overflow + spaced.overflow > 0) wide.push({ path, plain, spaced });
  }
  expect(wide).toEqual([]);
});

it('main targets are 44 px high and all are at least 24', async () => {
  await app.page.setViewportSize(PHONE);
  const small: string[] = [];
  for (const path of paths) {
    await goto(path);
    small.push(...(await smallTargets(app)).map((target) => `${path}: ${target}`));
  }
  expect(small).toEqual([]);
});

/** Controls below their least height; links within a sentence are as high as their line. */
function smallTargets(opened: OpenedApp): Promise<string[]> {
  return opened.page.evaluate(() => {
    const main = '.verbs a, .button, .menu-button ~ .pages a, .place-card, .kind, .chip-button';
    const fields = 'main input:not([type=checkbox], [type=radio]), main select, main textarea';
    const found: string[] = [];
    const check = (selector: string, least: number) => {
      for (const element of document.querySelectorAll(selector)) {
        const { height } = element.getBoundingClientRect();
        if (height > 0 && height < least - 0.5) {
          found.push(`${Math.round(height)} px: ${element.outerHTML.slice(0, 100)}`);
        }
      }
    };
    check(`${main}, ${fields}`, 44);
    check('button', 24);
    return found;
  });
}

it('every page says what it is in its title and in one main heading', async () => {
  const wrong: string[] = [];
  for (const path of paths) {
    await goto(path);
    const headings = await app.page.getByRole('heading', { level: 1 }).allTextContents();
    const title = await app.page.title();
    if (headings.length !== 1 || !title.startsWith(headings[0] ?? '?')) {
      wrong.push(`${path}: ${headings.join(' / ')}: ${title}`);
    }
  }
  expect(wrong).toEqual([]);
  expect(await app.page.evaluate(() => document.documentElement.lang)).toBe('en');
});
