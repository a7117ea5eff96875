import { expect, test } from 'vitest';
import { killWhileAppending } from './kill-while-appending.ts';

const MINUTES_5 = 300_000;

test('100 kills while appending lose nothing that was acknowledged', {
  timeout: MINUTES_5,
}, async () => {
  const counts = await killWhileAppending({ kills: 100, seed: 2027, fault: 'none' });
  expect(counts).toMatchObject({ kills: 100, lost: 0, damaged: 0 });
  expect(counts.acknowledged).toBeGreaterThan(100);
});

test('teeth: a store that acknowledged before it committed is caught', {
  timeout: MINUTES_5,
}, async () => {
  const counts = await killWhileAppending({ kills: 12, seed: 7, fault: 'acknowledge-early' });
  expect(counts.lost).toBeGreaterThan(0);
});
