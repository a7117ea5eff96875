import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { uuid7 } from '../base/id.ts';
import { seeded } from '../base/seeded.ts';
import { storeFile } from './data-folder.ts';
import { type Serving, startServing } from './serve.ts';

let folder = '';
let data = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'cratebook-serve-'));
  data = join(folder, 'books of ours');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function started(port = 0): Promise<Serving> {
  const outcome = await startServing({ data, port });
  if (!outcome.ok) throw new Error(outcome.refusal.message);
  return outcome.value;
}

/** Asks a server as the app does. */
async function signedIn(address: string) {
  const { origin, hash } = new URL(address);
  const send = (path: string, body?: unknown, cookie = ''): Promise<Response> =>
    fetch(
      origin + path,
      body === undefined
        ? { headers: { cookie } }
        : {
            method: 'POST',
            headers: { origin, cookie, 'content-type': 'application/json' },
            body: JSON.stringify(body),
          },
    );
  const answer = await send('/api/session', { key: hash.replace('#key=', '') });
  expect(answer.status).toBe(200);
  const cookie = answer.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  return (path: string, body?: unknown) => send(path, body, cookie);
}

function payment(number: number): { readonly id: string } {
  const ms = Date.UTC(2027, 1, 1) + number;
  return {
    id: uuid7(ms, seeded(number).bytes(10)),
    ...{ at: new Date(ms).toISOString(), by: 'manager', kind: 'payment', date: '2027-02-01' },
    ...{ seller: 'mei', tender: 'cash', cents: 100 + number },
  };
}

const BOOK = { group: 'wrenfield', season: 'spring-2027', start: 'demo' };
const RECORDS = '/api/books/wrenfield/spring-2027/records';

describe('a server that starts', () => {
  test('makes folder and store for its user alone, and keeps books over a restart', async () => {
    const first = await started();
    expect(statSync(data).mode & 0o777).toBe(0o700);
    expect(statSync(storeFile(data)).mode & 0o777).toBe(0o600);
    const ask = await signedIn(first.newAddress());
    expect((await ask('/api/books', BOOK)).status).toBe(201);
    const kept = await (await ask(RECORDS)).json();
    expect(kept.records.length).toBeGreaterThan(100);
    await first.stop();
    const second = await started();
    const again = await signedIn(second.newAddress());
    expect(await (await again(RECORDS)).json()).toEqual(kept);
    await second.stop();
  });

  test('listens on loopback alone', async () => {
    const serving = await started();
    const { hostname } = new URL(serving.newAddress());
    expect(hostname).toBe('127.0.0.1');
    await expect(fetch(`http://127.0.0.2:${serving.listening.port}/`)).rejects.toThrow();
    await serving.stop();
  });

  test('refuses a store that another one serves, with what to do', async () => {
    const serving = await started();
    const second = await startServing({ data, port: 0 });
    expect(second).toMatchObject({ ok: false, refusal: { name: 'store_in_use' } });
    await serving.stop();
  });

  test('takes the next port where none was asked for, and no other where one was', async () => {
    const first = await startServing({ data: join(folder, 'one') });
    const second = await startServing({ data: join(folder, 'two') });
    if (!first.ok || !second.ok) throw new Error('both start');
    const { port } = first.value.listening;
    expect(second.value.listening.port).toBeGreaterThan(port);
    await expect(startServing({ data, port })).rejects.toThrow(/EADDRINUSE/);
    await first.value.stop();
    await second.value.stop();
  });
});

describe('a server that is told to stop', () => {
  const PROGRAM = `
    const { runServe } = await import(${JSON.stringify(join(import.meta.dirname, 'run-serve.ts'))});
    process.exitCode = await runServe({ data: process.argv[1], port: 0, app: 'as it is' });`;

  function run(): { child: ChildProcess; address: Promise<string>; ended: Promise<number | null> } {
    const options = ['--input-type=module', '-e', PROGRAM, data];
    const child = spawn(process.execPath, options, { stdio: ['ignore', 'pipe', 'inherit'] });
    const address = new Promise<string>((resolve) => {
      let said = '';
      child.stdout?.on('data', (part) => {
        said += part;
        const found = /http:\S+/.exec(said)?.[0];
        if (found !== undefined) resolve(found);
      });
    });
    const ended = new Promise<number | null>((resolve) => child.on('exit', resolve));
    return { child, address, ended };
  }

  test.each(['SIGTERM', 'SIGINT'] as const)(
    '%s under load: ends well, and keeps all that it answered for',
    async (signal) => {
      const { child, address, ended } = run();
      const ask = await signedIn(await address);
      expect((await ask('/api/books', BOOK)).status).toBe(201);
      const answered = new Set<string>();
      let told = false;
      const sending = Array.from({ length: 60 }, async (_, number) => {
        const record = payment(number);
        const answer = await ask(RECORDS, { records: [record] }).catch(() => undefined);
        if (answer?.status === 200) answered.add(record.id);
        if (answered.size >= 10 && !told) told = child.kill(signal);
      });
      await Promise.all(sending);
      // A stop that had to be forced ends with 1.
      expect(await ended).toBe(0);
      expect(answered.size).toBeGreaterThanOrEqual(10);
      const serving = await started();
      const again = await signedIn(serving.newAddress());
      const { records } = await (await again(RECORDS)).json();
      const kept = new Set(records.map((each: { record: { id: string } }) => each.record.id));
      expect([...answered].filter((id) => !kept.has(id))).toEqual([]);
      await serving.stop();
    },
  );
});
