import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Tape, TapeReader } from './tape.ts';

const small = fc.nat(70_000);
const edges = fc.constantFrom(-(2 ** 31), -2, -1, 0, 65_533, 65_534, 65_535, 65_536, 2 ** 31 - 1);
const numbers = fc.oneof(small, edges, fc.integer());

it('gives back the numbers of every line, whatever piece they are in', () => {
  const tape = new Tape();
  const lines = fc.sample(fc.array(numbers, { minLength: 100, maxLength: 400, size: 'max' }), {
    numRuns: 3000,
    seed: 3,
  });
  const places = lines.map((line) => {
    if (tape.isNearlyFull) tape.turn();
    const place = tape.placeOf(tape.top);
    for (const number of line) tape.put(number);
    expect(tape.isFull).toBe(false);
    return place;
  });
  const reader = new TapeReader(tape);
  for (const [at, line] of lines.entries()) {
    reader.goTo(places[at] ?? 0);
    expect(line.map(() => reader.next())).toEqual(line);
  }
  expect(places.at(-1)).toBeGreaterThan(2 ** 18);
});

it('says that a line did not fit, and a small number that was put can be changed', () => {
  const tape = new Tape();
  for (let at = 0; at < 2 ** 18 - 1; at += 1) tape.put(7);
  tape.set(1, 4096);
  expect(tape.isFull).toBe(false);
  tape.put(-2);
  expect(tape.isFull).toBe(true);
  const reader = new TapeReader(tape);
  reader.goTo(0);
  expect([reader.next(), reader.next(), reader.next()]).toEqual([7, 4096, 7]);
});
