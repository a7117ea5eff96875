import { randomBytes } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { memoryStore } from '../journal/memory-store.ts';
import type { Store } from '../journal/store.ts';
import type { BookRecord } from '../records/record.ts';
import { type AppParts, createApp } from './app.ts';
import { Library } from './library.ts';
import { type Listening, type ListenOptions, listen } from './listen.ts';
import { Sessions } from './sessions.ts';

/** The real server on a free port, for tests: only its clock, store and demo are replaced. */
export interface TestServer {
  readonly port: number;
  readonly sessions: Sessions;
  readonly store: Store;
  /** The session cookie of someone signed in, as a Cookie header. */
  readonly cookie: string;
  /** What was told about bugs, newest last. */
  readonly bugs: string[];
  /** Moves the sessions' clock on. */
  passTime(ms: number): void;
  /** Sends exactly this: headers are not touched, and undefined ones are left out. */
  ask(method: string, path: string, headers?: Headers, body?: string | Buffer): Promise<Answered>;
  /** Asks as the app does: signed in, from our own page. */
  get(path: string): Promise<Answered>;
  post(path: string, value: unknown, type?: string): Promise<Answered>;
  stop(): Promise<void>;
}

type Headers = Readonly<Record<string, string | undefined>>;

export interface Answered {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly text: string;
  readonly bytes: Buffer;
  /** The JSON of the answer. */
  readonly json: unknown;
}

export interface TestServerOptions {
  readonly store?: Store;
  readonly demo?: readonly BookRecord[];
  readonly parts?: Partial<AppParts>;
  readonly patience?: ListenOptions['patience'];
}

export async function testServer(options: TestServerOptions = {}): Promise<TestServer> {
  const store = options.store ?? memoryStore();
  const files = builtApp();
  const bugs: string[] = [];
  let nowMs = 0;
  let listening: Listening | undefined;
  const sessions = new Sessions({ now: () => nowMs, random: randomBytes });
  const app = createApp({
    library: new Library(store, () => '2027-04-19'),
    sessions,
    instant: () => '2027-04-19T20:11:05.000Z',
    today: () => '2027-04-19',
    demo: () => options.demo ?? [],
    port: () => listening?.port ?? 0,
    appFiles: files,
    newReference: () => 'ref-1',
    reportBug: (reference, bug) => bugs.push(`${reference} ${String(bug)}`),
    ...options.parts,
  });
  listening = await listen(app, {
    port: 0,
    ...(options.patience && { patience: options.patience }),
  });
  const { port } = listening;
  const cookie = `cratebook-${port}=${sessions.start(sessions.newKey())}`;
  const ask: TestServer['ask'] = (method, path, headers, body) =>
    exchange(port, method, path, { host: `127.0.0.1:${port}`, ...headers }, body);
  const own = { cookie, origin: `http://127.0.0.1:${port}`, 'sec-fetch-site': 'same-origin' };
  return {
    port,
    sessions,
    store,
    cookie,
    bugs,
    ask,
    passTime: (ms) => {
      nowMs += ms;
    },
    get: (path) => ask('GET', path, own),
    post: (path, value, type = 'application/json') => {
      const isRaw = typeof value === 'string' || value instanceof Buffer;
      const body = isRaw ? value : JSON.stringify(value);
      return ask('POST', path, { ...own, 'content-type': type }, body);
    },
    stop: async () => {
      await listening.stop();
      rmSync(join(files, '..'), { recursive: true });
    },
  };
}

/** A folder like a built app's, with a file beside it that must never be served. */
function builtApp(): string {
  const folder = mkdtempSync(join(tmpdir(), 'cratebook-app-'));
  writeFileSync(join(folder, 'secret.txt'), 'not for the browser');
  const files = join(folder, 'web');
  mkdirSync(join(files, 'assets'), { recursive: true });
  mkdirSync(join(files, '.hidden'));
  writeFileSync(join(files, 'index.html'), '<!doctype html><title>Cratebook</title>');
  writeFileSync(join(files, 'assets', 'app-1a2b.js'), 'export {};');
  writeFileSync(join(files, 'assets', 'app-1a2b.js.map'), '{}');
  writeFileSync(join(files, '.hidden', 'notes.txt'), 'not for the browser');
  return files;
}

function exchange(
  port: number,
  method: string,
  path: string,
  headers: Headers,
  body: string | Buffer = '',
): Promise<Answered> {
  const named = Object.entries(headers).filter(
    (pair): pair is [string, string] => pair[1] !== undefined,
  );
  return new Promise((resolve, reject) => {
    const asked = request(
      { host: '127.0.0.1', port, method, path, headers: Object.fromEntries(named), agent: false },
      (answer) => {
        const parts: Buffer[] = [];
        answer.on('data', (part: Buffer) => parts.push(part));
        answer.on('error', reject);
        answer.on('end', () => {
          const bytes = Buffer.concat(parts);
          const text = bytes.toString('utf8');
          resolve({
            status: answer.statusCode ?? 0,
            headers: answer.headers,
            text,
            bytes,
            get json(): unknown {
              return JSON.parse(text);
            },
          });
        });
      },
    );
    asked.on('error', reject);
    asked.end(body);
  });
}
