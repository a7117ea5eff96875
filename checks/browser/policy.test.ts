import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BOOK, type OpenedApp, openApp, PHONE } from './harness.ts';

/** What a browser itself keeps from happening, tried in a real one. */
let app: OpenedApp;
beforeAll(async () => {
  app = await openApp({ book: 'demo' });
});
afterAll(() => app.close());

const ran = () => app.page.evaluate(() => Reflect.get(globalThis, 'ran') ?? 'nothing');

test('scripts that get into the page do not run', async () => {
  await app.goto('/');
  const told = await app.page.evaluate(async () => {
    const refusals: string[] = [];
    document.addEventListener('securitypolicyviolation', (event) => {
      refusals.push(event.effectiveDirective);
    });
    const attempt = (work: () => void): void => {
      try {
        work();
      } catch {
        refusals.push('thrown');
      }
    };
    attempt(() => {
      const script = document.createElement('script');
      script.append("globalThis.ran = 'inline';");
      document.body.append(script);
    });
    attempt(() => {
      document.body.innerHTML += '<img src="x" onerror="globalThis.ran = 1">';
    });
    attempt(() => {
      const button = document.createElement('button');
      button.setAttribute('onclick', "globalThis.ran = 'handler'");
      document.body.append(button);
      button.click();
    });
    attempt(() => {
      const image = new Image();
      image.src = 'https://elsewhere.example/pixel.png';
      document.body.append(image);
    });
    await new Promise((resolve) => setTimeout(resolve, 300));
    // Not at once: what a test itself runs may evaluate, whatever the policy.
    // biome-ignore lint/security/noGlobalEval: it must be refused
    attempt(() => globalThis.eval("globalThis.ran = 'eval'"));
    return refusals;
  });
  expect(await ran()).toBe('nothing');
  expect(told).toEqual(expect.arrayContaining(['thrown', 'img-src']));
  expect(told.join()).toMatch(/script-src|require-trusted-types-for/);
});

test('names that hold markup are shown as text', async () => {
  const name = `<img src=x onerror="globalThis.ran='name'"> O'Brien {{7*7}} \u202Eabc`;
  const family = {
    ...{ id: '0195f3c2-7d1a-7c3e-9a41-1f0c6e2b9d10', at: '2027-04-18T18:00:00.000Z' },
    ...{ by: 'manager', kind: 'family', family: 'markup', name },
  };
  await app.api('POST', `/api/books/${BOOK.group}/${BOOK.season}/records`, { records: [family] });
  await app.goto('/families');
  expect(await app.page.locator('body').textContent()).toContain("O'Brien {{7*7}}");
  expect(await app.page.locator('img[src="x"]').count()).toBe(0);
  expect(await ran()).toBe('nothing');
});

test('a page of another origin reads nothing, changes nothing and frames nothing', async () => {
  const other = createServer((_asked, answer) => {
    answer.setHeader('Content-Type', 'text/html');
    answer.end('<!doctype html><title>Elsewhere</title>');
  });
  await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
  const { port } = other.address() as AddressInfo;
  // The cookie of the session is in this browser: only the server and the browser stand between.
  const page = await app.context.newPage();
  await page.goto(`http://127.0.0.1:${port}/`);
  const tried = await page.evaluate(async (origin) => {
    const status = async (path: string, init: RequestInit): Promise<string> => {
      try {
        const answer = await fetch(origin + path, { credentials: 'include', ...init });
        return `${answer.type} ${answer.status} ${(await answer.text()).length}`;
      } catch {
        return 'refused';
      }
    };
    const book = '{"group":"a","season":"b","start":"empty"}';
    const frame = document.createElement('iframe');
    frame.src = `${origin}/`;
    document.body.append(frame);
    await new Promise((resolve) => frame.addEventListener('load', resolve));
    return {
      read: await status('/api/books', {}),
      opaque: await status('/api/books', { mode: 'no-cors' }),
      write: await status('/api/books', { method: 'POST', body: book, mode: 'no-cors' }),
      preflight: await status('/api/books', {
        method: 'POST',
        body: book,
        headers: { 'Content-Type': 'application/json' },
      }),
      framed: frame.contentDocument === null ? 'out of reach' : 'readable',
    };
  }, app.origin);
  await page.close();
  other.close();
  const { books } = (await app.api('GET', '/api/books')) as { books: { group: string }[] };
  expect(books.map((book) => book.group)).toEqual([BOOK.group]);
  expect(tried.read).toBe('refused');
  expect(tried.preflight).toBe('refused');
  expect(['refused', 'opaque 0 0']).toContain(tried.opaque);
  expect(['refused', 'opaque 0 0']).toContain(tried.write);
  expect(tried.framed).toBe('out of reach');
});

test('the key works once: the same address in another browser opens nothing', async () => {
  const address = app.serving.newAddress();
  const browser = app.context.browser();
  if (browser === null) throw new Error('the context has a browser');
  const [first, second] = [
    await browser.newContext(),
    await browser.newContext({ viewport: PHONE }),
  ];
  const statuses: number[] = [];
  for (const context of [first, second]) {
    const page = await context.newPage();
    const answered = page.waitForResponse((answer) => answer.url().endsWith('/api/session'));
    await page.goto(address);
    statuses.push((await answered).status());
    await context.close();
  }
  expect(statuses).toEqual([200, 401]);
});
