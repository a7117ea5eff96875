import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type TestServer, testServer } from './test-server.ts';

let server: TestServer;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.stop());

describe('files of the app', () => {
  test('the first page is asked for again each time, the rest is kept', async () => {
    const page = await server.ask('GET', '/');
    expect(page.status).toBe(200);
    expect(page.headers['content-type']).toContain('text/html');
    expect(page.headers['cache-control']).toBe('no-cache');
    const script = await server.ask('GET', '/assets/app-1a2b.js');
    expect(script.headers['content-type']).toContain('javascript');
    expect(script.headers['cache-control']).toContain('immutable');
  });

  test('the address of a screen gets the first page, a missing file gets 404', async () => {
    const screen = await server.ask('GET', '/families/lind');
    expect(screen.text).toContain('<title>Cratebook</title>');
    expect(screen.headers['cache-control']).toBe('no-cache');
    for (const path of ['/assets/gone.js', '/nothing.txt', '/api/nothing', '/api', '/api/']) {
      const answer = await server.ask('GET', path);
      expect(answer.status === 404 || path === '/api', path).toBe(true);
      expect(answer.text.includes('secret'), path).toBe(false);
    }
  });

  test.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e%2fsecret.txt',
    '/..%5csecret.txt',
    '/..\\secret.txt',
    '/assets/%252e%252e/%252e%252e/secret.txt',
    '//secret.txt',
    '/.hidden/notes.txt',
    '/.git/config',
    '/assets/app-1a2b.js.map',
    '/%00',
    '/assets/',
    '/assets',
  ])('%s gives nothing away', async (path) => {
    const answer = await server.ask('GET', path);
    expect([200, 400, 404]).toContain(answer.status);
    expect(answer.text).not.toMatch(/not for the browser|app-1a2b|\[core\]/);
    if (answer.status === 200) expect(answer.text).toContain('<title>Cratebook</title>');
  });

  test('a folder where nothing was built says what to run', async () => {
    const unbuilt = await testServer({ parts: { appFiles: '/nonexistent' } });
    const answer = await unbuilt.ask('GET', '/');
    expect(answer.status).toBe(404);
    expect(answer.text).toContain('npm run build');
    await unbuilt.stop();
  });
});

describe('a sender that is slow', () => {
  const waits = { headersTimeout: 300, requestTimeout: 300, connectionsCheckingInterval: 50 };
  test('is cut off, with nothing changed, while others are served', async () => {
    const patient = await testServer({ patience: waits });
    const host = `127.0.0.1:${patient.port}`;
    const heads = [
      `POST /api/books HTTP/1.1\r\nHost: ${host}\r\nOrigin: http://${host}\r\n` +
        `Cookie: ${patient.cookie}\r\nContent-Type: application/json\r\n` +
        'Content-Length: 100\r\n\r\n{"group":',
      `GET / HTTP/1.1\r\nHost: ${host}\r\nX-Slow: `,
    ];
    const ends = heads.map(
      (head) =>
        new Promise<string>((resolve) => {
          let heard = '';
          const socket = connect(patient.port, '127.0.0.1', () => socket.write(head));
          socket.on('data', (part) => {
            heard += part;
          });
          socket.on('error', () => resolve(heard));
          socket.on('close', () => resolve(heard));
        }),
    );
    expect((await patient.get('/api/books')).status).toBe(200);
    for (const heard of await Promise.all(ends)) expect(heard).toMatch(/^(?:HTTP\/1.1 408|$)/);
    expect((await patient.get('/api/books')).json).toMatchObject({ books: [] });
    await patient.stop();
  });
});
