import { expect, test } from 'vitest';
import { axeFindings, openApp, reflowAt320 } from './harness.ts';

/** The measures that all browser tests lean on find what they should. */
test('axe and the reflow measure find faults that are put in', async () => {
  const app = await openApp({ book: 'empty' });
  const broken = (await app.context.newPage()) satisfies typeof app.page;
  await broken.setContent('<main><img src="/x.png"><div style="width: 400px">wide</div></main>');
  expect((await axeFindings(broken)).join()).toContain('image-alt');
  expect(await reflowAt320(broken)).toMatchObject({ overflow: expect.any(Number) });
  expect((await reflowAt320(broken)).overflow).toBeGreaterThan(70);
  await app.close();
});

test('the printed address opens the app once, with no broken policy', async () => {
  const app = await openApp({ book: 'empty' });
  expect(app.complaints).toEqual([]);
  expect(await app.page.evaluate(() => location.hash)).not.toContain('key');
  const cookies = await app.context.cookies(`${app.origin}/api/books`);
  expect(cookies).toMatchObject([{ httpOnly: true, sameSite: 'Strict' }]);
  await app.close();
});
