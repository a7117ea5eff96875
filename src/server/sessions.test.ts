import { randomBytes } from 'node:crypto';
import { afterEach, describe, expect, test } from 'vitest';
import { Sessions } from './sessions.ts';
import { type Answered, type TestServer, testServer } from './test-server.ts';

const HOUR = 3_600_000;
let server: TestServer | undefined;
afterEach(async () => {
  await server?.stop();
  server = undefined;
});

/** Sends a key as the app does, without a session. */
async function signIn(key: string) {
  const { ask, port } = server ?? (await start());
  const headers = { origin: `http://127.0.0.1:${port}`, 'content-type': 'application/json' };
  return ask('POST', '/api/session', headers, JSON.stringify({ key }));
}

function cookieOf(answer: Answered): string {
  return answer.headers['set-cookie']?.[0]?.split(';')[0] ?? '';
}

async function start(): Promise<TestServer> {
  server = await testServer();
  return server;
}

describe('the one-time key', () => {
  test('is changed for a cookie that scripts and other sites cannot use', async () => {
    const { sessions, ask, port } = await start();
    const answer = await signIn(sessions.newKey());
    expect(answer.status).toBe(200);
    const [set = ''] = answer.headers['set-cookie'] ?? [];
    expect(set).toMatch(/^cratebook-\d+=[\w-]{43}; /);
    expect(set).toContain('HttpOnly');
    expect(set).toContain('SameSite=Strict');
    expect(set).toContain('Path=/api');
    const cookie = cookieOf(answer);
    expect((await ask('GET', '/api/books', { cookie })).status).toBe(200);
    expect(cookie).toContain(`cratebook-${port}`);
  });

  test('is dead once used, once replaced, and when it was never given', async () => {
    const { sessions } = await start();
    const first = sessions.newKey();
    const second = sessions.newKey();
    expect((await signIn(first)).status).toBe(401);
    expect((await signIn(second)).status).toBe(200);
    expect((await signIn(second)).status).toBe(401);
    const guessed = await signIn('x'.repeat(43));
    expect(guessed.status).toBe(401);
    expect(guessed.json).toMatchObject({ name: 'key_not_valid' });
    expect(guessed.headers).not.toHaveProperty('set-cookie');
  });

  test('sent twice at once starts one session', async () => {
    const { sessions } = await start();
    const key = sessions.newKey();
    const answers = await Promise.all([signIn(key), signIn(key), signIn(key)]);
    expect(answers.map((answer) => answer.status).sort()).toEqual([200, 401, 401]);
  });

  test.each([{}, { key: '' }, { key: 7 }, { key: 'x', more: 1 }, [], null])(
    'a request like %j is refused',
    async (body) => {
      const { ask, port } = await start();
      const headers = { origin: `http://127.0.0.1:${port}`, 'content-type': 'application/json' };
      const answer = await ask('POST', '/api/session', headers, JSON.stringify(body));
      expect(answer.status).toBe(400);
    },
  );

  test('and the session token have at least 128 random bits, and are never equal', () => {
    const asked: number[] = [];
    const random = (bytes: number) => {
      asked.push(bytes);
      return randomBytes(bytes);
    };
    const sessions = new Sessions({ now: () => 0, random });
    const keys = Array.from({ length: 50 }, () => sessions.newKey());
    expect(new Set(keys).size).toBe(50);
    expect(Math.min(...asked) * 8).toBeGreaterThanOrEqual(128);
  });
});

describe('a session', () => {
  test('left alone for more than 12 hours is over', async () => {
    const { get, passTime } = await start();
    passTime(12 * HOUR);
    expect((await get('/api/books')).status).toBe(200);
    passTime(12 * HOUR + 1);
    expect((await get('/api/books')).status).toBe(401);
  });

  test('used all the time still ends after 7 days', async () => {
    const { get, passTime } = await start();
    for (let hours = 0; hours <= 7 * 24; hours += 8) {
      expect((await get('/api/books')).status).toBe(200);
      passTime(8 * HOUR);
    }
    expect((await get('/api/books')).status).toBe(401);
  });

  test('that is ended opens the book no more, and no other session ends with it', async () => {
    const { get, post, sessions, cookie } = await start();
    const other = cookieOf(await signIn(sessions.newKey()));
    const ended = await post('/api/session/end', {});
    expect([ended.status, ended.json]).toEqual([200, { signedIn: false }]);
    const [name = '', ...rest] = ended.headers['set-cookie']?.[0]?.split('; ') ?? [];
    expect([name, rest]).toEqual([
      `${cookie.split('=')[0]}=`,
      expect.arrayContaining(['Max-Age=0', 'Path=/api']),
    ]);
    // The cookie itself, kept by somebody: neither reads nor ends anything.
    expect((await get('/api/books')).status).toBe(401);
    expect((await post('/api/books', { group: 'a', season: 'b', start: 'empty' })).status).toBe(
      401,
    );
    expect((await post('/api/session/end', {})).status).toBe(401);
    expect((await server?.ask('GET', '/api/books', { cookie: other }))?.status).toBe(200);
  });

  test('is not ended by another site', async () => {
    const { ask, cookie, get } = await start();
    for (const origin of [undefined, 'http://example.org']) {
      const answer = await ask('POST', '/api/session/end', { cookie, origin });
      expect(answer.status).toBe(403);
    }
    expect((await get('/api/books')).status).toBe(200);
  });

  test('makes room: of more than 20 the oldest ends', () => {
    let made = 0;
    const sessions = new Sessions({ now: () => 0, random: () => Uint8Array.of(made++, 1, 2, 3) });
    const tokens = Array.from({ length: 21 }, () => sessions.start(sessions.newKey()) ?? '');
    expect(sessions.isRunning(tokens[0] ?? '')).toBe(false);
    expect(sessions.isRunning(tokens[1] ?? '')).toBe(true);
    expect(sessions.isRunning(tokens[20] ?? '')).toBe(true);
  });
});
