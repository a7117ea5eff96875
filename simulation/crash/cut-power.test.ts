import { describe, expect, test } from 'vitest';
import { seeded } from '../../src/base/seeded.ts';
import { cutPower } from './cut-power.ts';
import { Disk } from './disk.ts';

const MINUTES_5 = { timeout: 300_000 };

describe('power cuts while appending', () => {
  test('in 1,000 states nothing acknowledged is lost and nothing damaged', MINUTES_5, async () => {
    const counts = await cutPower({ states: 1000, seed: 2027, fault: 'none', appends: 250 });
    expect(counts).toMatchObject({ states: 1000, losing: 0, damaged: 0 });
    expect(counts.acknowledged).toBeGreaterThanOrEqual(250);
  });

  test('teeth: without a sync at every commit states lose records', MINUTES_5, async () => {
    const fault = 'synchronous-normal';
    const counts = await cutPower({ states: 60, seed: 1, fault, appends: 250 });
    expect(counts.losing).toBeGreaterThan(10);
  });

  test('teeth: without any sync states lose records and are damaged', MINUTES_5, async () => {
    const fault = 'synchronous-off';
    const counts = await cutPower({ states: 60, seed: 1, fault, appends: 250 });
    expect(counts.losing).toBeGreaterThan(10);
    expect(counts.damaged).toBeGreaterThan(0);
  });

  test('teeth: acknowledging before the commit loses records', MINUTES_5, async () => {
    const fault = 'acknowledge-early';
    const counts = await cutPower({ states: 60, seed: 1, fault, appends: 250 });
    expect(counts.losing).toBeGreaterThan(10);
    expect(counts.damaged).toBe(0);
  });
});

describe('the model of the disk', () => {
  const old = Buffer.alloc(1536, 'a');
  const fresh = Buffer.alloc(1536, 'b');
  const disk = () => {
    const made = new Disk();
    made.apply({ kind: 'create', file: 'x' });
    made.apply({ kind: 'write', file: 'x', offset: 0, bytes: old });
    made.apply({ kind: 'sync', file: 'x' });
    made.apply({ kind: 'sync-folder' });
    return made;
  };
  const states = (of: Disk) => {
    const random = seeded(5);
    const cuts = Array.from({ length: 300 }, () => of.afterPowerCut(random).get('x'));
    return new Set(cuts.map((content) => content?.toString('latin1')));
  };

  test('what was synced under a synced name stays as it is', () => {
    expect(states(disk())).toEqual(new Set([old.toString()]));
  });

  test('a write since is kept, dropped or torn at sectors, in every way', () => {
    const written = disk();
    written.apply({ kind: 'write', file: 'x', offset: 0, bytes: fresh });
    const sectors = ['a', 'b'].map((letter) => letter.repeat(512));
    const all = sectors.flatMap((a) => sectors.flatMap((b) => sectors.map((c) => a + b + c)));
    expect(states(written)).toEqual(new Set(all));
  });

  test('a new name may be missing until its folder is synced, an old one may come back', () => {
    const made = new Disk();
    made.apply({ kind: 'create', file: 'x' });
    expect(states(made)).toEqual(new Set(['', undefined]));
    const removed = disk();
    removed.apply({ kind: 'remove', file: 'x' });
    expect(states(removed)).toEqual(new Set([old.toString(), undefined]));
    removed.apply({ kind: 'sync-folder' });
    expect(states(removed)).toEqual(new Set([undefined]));
  });
});
