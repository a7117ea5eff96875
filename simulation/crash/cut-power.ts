import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Seeded, seeded } from '../../src/base/seeded.ts';
import type { Fault } from './appender.ts';
import { Disk } from './disk.ts';
import { lookAt } from './look-at.ts';
import { traceAppender, type WriteTrace } from './write-trace.ts';

/**
 * Cuts the power of a store that is appending, many times over: one run is recorded, and from its
 * writes and syncs the states are made in which a cut at a random moment may leave the disk. Each
 * is opened as a store and held against what had been acknowledged by then.
 */
export interface CutCounts {
  readonly states: number;
  /** States in which something acknowledged is missing or not word for word. */
  readonly losing: number;
  /** States in which the store is damaged or does not open. */
  readonly damaged: number;
  /** Records acknowledged in the recorded run, and the disk's syncs in it. */
  readonly acknowledged: number;
  readonly syncs: number;
}

export interface CutOptions {
  readonly states: number;
  readonly seed: number;
  readonly fault: Fault;
  readonly appends: number;
}

export async function cutPower(options: CutOptions): Promise<CutCounts> {
  const folder = mkdtempSync(join(tmpdir(), 'cratebook-cut-'));
  const store = join(folder, 'store');
  mkdirSync(store);
  const trace = traceAppender(store, options.seed, options.fault, options.appends);
  assertExplained(trace);

  const random = seeded(options.seed);
  const counts = { states: 0, losing: 0, damaged: 0 };
  const disk = new Disk();
  const told: number[] = [];
  const moments = momentsIn(trace, options.states, random);
  for (const [at, event] of trace.events.entries()) {
    disk.apply(event);
    if (event.kind === 'told') told.push(event.number);
    for (let state = moments.get(at) ?? 0; state > 0; state -= 1) {
      const look = await lookAtState(join(folder, 'cut'), disk.afterPowerCut(random), told);
      counts.states += 1;
      if (look.lost.length > 0) counts.losing += 1;
      if (look.damaged) counts.damaged += 1;
    }
  }
  rmSync(folder, { recursive: true, force: true });
  const syncs = trace.events.filter(({ kind }) => kind === 'sync').length;
  return { ...counts, acknowledged: told.length, syncs };
}

/** How many cuts come right after each event. */
function momentsIn(trace: WriteTrace, states: number, random: Seeded): ReadonlyMap<number, number> {
  const moments = new Map<number, number>();
  for (let state = 0; state < states; state += 1) {
    const at = random.whole(0, trace.events.length - 1);
    moments.set(at, (moments.get(at) ?? 0) + 1);
  }
  return moments;
}

/**
 * All writes must have been seen: replayed without a cut they give the very files that were left.
 */
function assertExplained({ events, left }: WriteTrace): void {
  const disk = new Disk();
  for (const event of events) disk.apply(event);
  const whole = disk.whole();
  const same =
    whole.size === left.size &&
    [...left].every(([name, bytes]) => whole.get(name)?.equals(bytes) === true);
  if (!same) throw new Error('the recorded writes do not give the files that were left');
}

async function lookAtState(
  folder: string,
  files: ReadonlyMap<string, Buffer>,
  told: readonly number[],
) {
  mkdirSync(folder);
  for (const [name, bytes] of files) writeFileSync(join(folder, name), bytes);
  const look = await lookAt(join(folder, 'store.sqlite'), told);
  rmSync(folder, { recursive: true });
  return look;
}
