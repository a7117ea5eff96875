import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Seeded, seeded } from '../../src/base/seeded.ts';
import type { Fault } from './appender.ts';
import { lookAt } from './look-at.ts';

/**
 * Kills a process that is appending (`kill -9`) at seeded random moments, opens what it left and
 * counts what was acknowledged and is not there. This proves nothing about power cuts: the system
 * still writes what the dead process had handed over (see power-cut.ts).
 */
export interface KillCounts {
  readonly kills: number;
  readonly acknowledged: number;
  /** Acknowledged records that are missing or not word for word what was appended. */
  readonly lost: number;
  /** Kills after which the store was damaged or would not open. */
  readonly damaged: number;
}

export interface KillOptions {
  readonly kills: number;
  readonly seed: number;
  readonly fault: Fault;
  readonly tell?: (counts: KillCounts) => void;
}

/** One store lives through this many kills, then a new one begins. */
const KILLS_A_STORE = 25;
const APPENDING_MS = 40;
const STARTING_MS = 200;

export async function killWhileAppending(options: KillOptions): Promise<KillCounts> {
  const random = seeded(options.seed);
  const folder = mkdtempSync(join(tmpdir(), 'cratebook-kill-'));
  let counts: KillCounts = { kills: 0, acknowledged: 0, lost: 0, damaged: 0 };
  let known: number[] = [];
  for (let kill = 0; kill < options.kills; kill += 1) {
    if (kill % KILLS_A_STORE === 0) known = [];
    const path = join(folder, `store-${Math.floor(kill / KILLS_A_STORE)}.sqlite`);
    const told = await appendAndDie(path, random, options.fault);
    known.push(...told);
    const { lost, damaged } = await lookAt(path, known);
    counts = {
      kills: counts.kills + 1,
      acknowledged: counts.acknowledged + told.length,
      lost: counts.lost + lost.length,
      damaged: counts.damaged + (damaged ? 1 : 0),
    };
    // What is lost is counted once.
    known = known.filter((number) => !lost.includes(number));
    options.tell?.(counts);
  }
  rmSync(folder, { recursive: true, force: true });
  return counts;
}

/** Starts an appender, kills it while it starts or while it appends; answers what it told. */
function appendAndDie(path: string, random: Seeded, fault: Fault): Promise<readonly number[]> {
  const script = fileURLToPath(new URL('appender.ts', import.meta.url));
  const seed = random.whole(1, 1_000_000);
  const whileStarting = random.chance(15);
  const ms = random.fraction() * (whileStarting ? STARTING_MS : APPENDING_MS);
  const child = spawn(process.execPath, [script, path, String(seed), fault], {
    stdio: ['ignore', 'pipe', 'inherit'],
    // Starting is most of the time a kill takes.
    env: { ...process.env, NODE_COMPILE_CACHE: join(tmpdir(), 'cratebook-compiled') },
  });
  let told = '';
  let armed = false;
  const killSoon = () => {
    if (!armed) setTimeout(() => child.kill('SIGKILL'), ms);
    armed = true;
  };
  if (whileStarting) killSoon();
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    told += text;
    killSoon();
  });
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code, signal) => {
      if (signal !== 'SIGKILL') reject(new Error(`the appender ended by itself (${code})`));
      // A last line without its end was not told.
      resolve(told.split('\n').slice(0, -1).map(Number));
    });
  });
}
