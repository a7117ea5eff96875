import { afterEach, expect, test } from 'vitest';
import { launchedBrowser, type OpenedApp, openApp } from './harness.ts';

/** What a slow line carries at the first visit, and in which order. */
let app: OpenedApp;
afterEach(() => app.close());

const pathOf = (address: string): string => new URL(address).pathname;

test('the book is asked for, once, while the script of the app is on its way', async () => {
  app = await openApp({ book: 'demo' });
  const cookies = await app.context.cookies();
  const elsewhere = await (await launchedBrowser()).newContext({
    serviceWorkers: 'block',
    storageState: { cookies, origins: [] },
  });
  const visit = await elsewhere.newPage();
  const asked: string[] = [];
  visit.on('request', (request) => asked.push(pathOf(request.url())));
  const records = visit.waitForResponse(/\/api\/books\?with=records$/);
  // The app comes only once its book was asked for: it would wait for ever if that were its task.
  await visit.route(/\/assets\/first-[^/]*\.js$/, async (route) => {
    await records;
    await route.continue();
  });
  await visit.goto(app.origin);
  await visit.locator('main h1:text-is("Places")').waitFor();
  expect(asked.filter((path) => path === '/api/books')).toHaveLength(1);
  // They came with the books: one question and one answer less on a slow line.
  expect(asked.filter((path) => path.endsWith('/records'))).toHaveLength(0);
  await elsewhere.close();
});

test('scripts and styles come packed', async () => {
  app = await openApp({ book: 'demo' });
  const unpacked: string[] = [];
  let packed = 0;
  app.page.on('response', (answer) => {
    const { 'content-encoding': encoding, 'content-type': type = '' } = answer.headers();
    if (!/javascript|css/.test(type)) return;
    if (encoding === 'br' || encoding === 'gzip') packed += 1;
    else unpacked.push(pathOf(answer.url()));
  });
  await app.goto('/families');
  expect(packed).toBeGreaterThan(3);
  const sizes = unpacked.map((path) => app.page.evaluate(sizeOf, path));
  expect(Math.max(0, ...(await Promise.all(sizes)))).toBeLessThanOrEqual(1024);
});

async function sizeOf(path: string): Promise<number> {
  return (await (await fetch(path)).arrayBuffer()).byteLength;
}
