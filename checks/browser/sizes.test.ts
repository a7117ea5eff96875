import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { APP_FILES } from '../../src/start/built-app.ts';
import { openApp } from './harness.ts';

/** Bytes of script after gzip: what a phone on a slow line waits for. */
const FIRST_SCREEN_MAX = 90_000;
const ALL_MAX = 250_000;
/** Readers of statements and lists: fetched only once a file was chosen or a list pasted. */
const READERS_MAX = 50_000;
const READERS = /^(?:read-chosen|sheet-table|papaparse)/;

const gzipped = (bytes: Buffer): number => gzipSync(bytes).length;

test('the first screen has at most 90 KB of script, all 250 KB, readers 50 KB', async () => {
  const app = await openApp({ book: 'demo' });
  let first = 0;
  const sizes: Promise<void>[] = [];
  app.page.on('response', (answer) => {
    if (!new URL(answer.url()).pathname.endsWith('.js')) return;
    sizes.push(
      answer.body().then((body) => {
        first += gzipped(body);
      }),
    );
  });
  await app.goto('/');
  await Promise.all(sizes);
  await app.close();
  const folder = join(APP_FILES, 'assets');
  const scripts = readdirSync(folder).filter((file) => file.endsWith('.js'));
  const sizeOf = (files: readonly string[]) =>
    files.reduce((sum, file) => sum + gzipped(readFileSync(join(folder, file))), 0);
  const readers = sizeOf(scripts.filter((file) => READERS.test(file)));
  const all = sizeOf(scripts.filter((file) => !READERS.test(file)));
  process.stdout.write(
    `script after gzip: first screen ${first} bytes, all ${all} bytes, readers ${readers} bytes\n`,
  );
  expect(readers).toBeGreaterThan(0);
  expect(readers).toBeLessThanOrEqual(READERS_MAX);
  expect(first).toBeGreaterThan(0);
  expect(first).toBeLessThanOrEqual(FIRST_SCREEN_MAX);
  expect(all).toBeLessThanOrEqual(ALL_MAX);
});
