import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type TestServer, testServer } from './test-server.ts';

/** What pages of other sites and pointed names can reach: nothing. (OWASP CSRF cheat sheet.) */
let server: TestServer;
let own: Record<string, string>;
beforeAll(async () => {
  server = await testServer();
  own = {
    cookie: server.cookie,
    origin: `http://127.0.0.1:${server.port}`,
    'sec-fetch-site': 'same-origin',
    'content-type': 'application/json',
  };
});
afterAll(() => server.stop());

const newBook = JSON.stringify({ group: 'wrenfield', season: 'spring', start: 'empty' });
const startBook = (headers: Record<string, string | undefined>, body = newBook) =>
  server.ask('POST', '/api/books', { ...own, ...headers }, body);
const bookCount = async () => (await server.store.books()).length;

describe('host names', () => {
  test.each(['127.0.0.1', 'localhost', '[::1]'])('%s with our port is ours', async (name) => {
    const answer = await server.ask('GET', '/', { host: `${name}:${server.port}` });
    expect(answer.status).toBe(200);
  });
  test.each(['evil.example', 'localhost', '127.0.0.1', '127.0.0.1:1', 'localhost.evil.example'])(
    '%j is refused',
    async (host) => {
      const named = host === 'localhost.evil.example' ? `${host}:${server.port}` : host;
      const answer = await server.ask('GET', '/api/books', { ...own, host: named });
      expect([400, 403]).toContain(answer.status);
      const page = await server.ask('GET', '/', { host: named });
      expect([400, 403]).toContain(page.status);
    },
  );
});

describe('requests that change something', () => {
  const foreign: Record<string, Record<string, string | undefined>> = {
    'from another site': { origin: 'https://evil.example', 'sec-fetch-site': 'cross-site' },
    'from another site, by an old browser': {
      origin: 'https://evil.example',
      'sec-fetch-site': undefined,
    },
    'from another port of this machine': {
      origin: 'http://127.0.0.1:1',
      'sec-fetch-site': 'same-site',
    },
    'with our origin but said to be same-site': { 'sec-fetch-site': 'same-site' },
    'from a page without an origin': { origin: 'null' },
    'without an origin': { origin: undefined, 'sec-fetch-site': undefined },
    'typed into the address bar': { origin: undefined, 'sec-fetch-site': 'none' },
    'by our other name': { origin: 'http://localhost:1' },
  };
  test.each(Object.keys(foreign))('%s: 403 and nothing changed', async (name) => {
    const answer = await startBook(foreign[name] ?? {});
    expect(answer.status).toBe(403);
    expect(answer.json).toMatchObject({ name: 'foreign_origin' });
    expect(await bookCount()).toBe(0);
  });

  test.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', undefined])(
    'sent as %s, as a form can: 415 and nothing changed',
    async (type) => {
      const answer = await startBook({ 'content-type': type });
      expect(answer.status).toBe(415);
      expect(await bookCount()).toBe(0);
    },
  );

  test('without a session: 401 and nothing changed', async () => {
    for (const cookie of [undefined, 'cratebook=x', `cratebook-${server.port}=x`]) {
      expect((await startBook({ cookie })).status).toBe(401);
    }
    expect(await bookCount()).toBe(0);
  });

  test('GET changes nothing', async () => {
    const answer = await server.ask('GET', '/api/books?group=a&season=b&start=empty', own);
    expect(answer.status).toBe(400);
    expect(await bookCount()).toBe(0);
  });

  test('the same request from our own page goes through', async () => {
    expect((await startBook({})).status).toBe(201);
    expect(await bookCount()).toBe(1);
  });
});

describe('reading', () => {
  test('data is refused to other sites, even as a link', async () => {
    const marks = [
      { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors', 'sec-fetch-dest': 'script' },
      { 'sec-fetch-site': 'same-site', 'sec-fetch-mode': 'cors', 'sec-fetch-dest': 'empty' },
      {
        'sec-fetch-site': 'cross-site',
        'sec-fetch-mode': 'navigate',
        'sec-fetch-dest': 'document',
      },
    ];
    for (const mark of marks) {
      const { origin: _, ...rest } = own;
      const answer = await server.ask('GET', '/api/books', { ...rest, ...mark });
      expect(answer.status).toBe(403);
    }
  });

  test('a link elsewhere may open the app, a frame may not', async () => {
    const site = { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' };
    const opened = await server.ask('GET', '/', { ...site, 'sec-fetch-dest': 'document' });
    expect(opened.status).toBe(200);
    const framed = await server.ask('GET', '/', { ...site, 'sec-fetch-dest': 'iframe' });
    expect(framed.status).toBe(403);
  });

  test('no answer allows another origin to read it', async () => {
    for (const origin of ['https://evil.example', 'null']) {
      for (const method of ['GET', 'POST', 'OPTIONS']) {
        const answer = await server.ask(method, '/api/books', { ...own, origin });
        expect(answer.status).toBe(403);
        expect(Object.keys(answer.headers).join()).not.toContain('access-control');
      }
    }
  });
});

describe('every answer', () => {
  const asked: [string, string, string][] = [
    ['GET', '/', 'the page'],
    ['GET', '/assets/app-1a2b.js', 'a file'],
    ['GET', '/api/books', 'data'],
    ['GET', '/api/nothing', 'not found'],
    ['PUT', '/api/books', 'another method'],
    ['POST', '/api/books', 'a bad request'],
  ];
  test.each(asked)('%s %s (%s) carries the protecting headers', async (method, path) => {
    const { headers } = await server.ask(method, path, own);
    expect(headers['content-security-policy']).toMatch(/^default-src 'none'; script-src 'self';/);
    expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
    });
    expect(headers).not.toHaveProperty('server');
    expect(headers).not.toHaveProperty('x-powered-by');
    if (path.startsWith('/api/')) expect(headers['cache-control']).toBe('no-store');
  });

  test.each(['TRACE', 'OPTIONS', 'PUT', 'DELETE', 'PATCH'])('%s is 405', async (method) => {
    for (const path of ['/', '/api/books', '/api/session', '/api/books/a/b/records']) {
      const answer = await server.ask(method, path, own);
      expect(answer.status, path).toBe(405);
      expect(answer.headers.allow, path).toMatch(/GET|POST/);
    }
  });
});
