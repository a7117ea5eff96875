import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { lookAt } from './look-at.ts';

/**
 * A process that may not write files longer than this stands for a full disk: SQLite cannot write,
 * at whatever page that happens, until the limit is raised (`prlimit` of util-linux).
 */
const LIMIT_BYTES = 300_000;

test('a full disk is told, loses nothing, and the process goes on once there is room', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'cratebook-full-'));
  const path = join(folder, 'store.sqlite');
  const script = fileURLToPath(new URL('append-past-full.ts', import.meta.url));
  const child = spawn(
    'prlimit',
    [`--fsize=${LIMIT_BYTES}:unlimited`, process.execPath, script, path],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  const told: number[] = [];
  const refusals: string[] = [];
  let toldWhenFull = 0;
  for await (const line of createInterface({ input: child.stdout })) {
    if (/^\d+$/.test(line)) told.push(Number(line));
    else if (refusals.push(line) === REFUSALS) {
      toldWhenFull = told.length;
      execFileSync('prlimit', [`--pid=${child.pid}`, '--fsize=unlimited']);
    }
  }
  expect(new Set(refusals)).toEqual(new Set(['store_is_full']));
  expect(toldWhenFull).toBeGreaterThan(10);
  expect(told.length).toBe(toldWhenFull + AFTER_FULL);
  expect(await lookAt(path, told)).toEqual({ lost: [], damaged: false });
  rmSync(folder, { recursive: true });
});

/** The limit is raised after this many refusals; append-past-full.ts goes on until it is. */
const REFUSALS = 20;
const AFTER_FULL = 50;
