import { expect, test } from 'vitest';
import { keepTally, keptTally, unitsTapped } from './sales-tally.ts';

const book = { group: 'wrenfield', season: 'spring-2027' };

function storage(full = false): Storage {
  const kept = new Map<string, string>();
  return {
    get length() {
      return kept.size;
    },
    clear: () => kept.clear(),
    getItem: (key) => kept.get(key) ?? null,
    key: (at) => [...kept.keys()][at] ?? null,
    removeItem: (key) => void kept.delete(key),
    setItem: (key, value) => {
      if (full) throw new Error('full');
      kept.set(key, value);
    },
  };
}

test('every tap is a unit, and what is kept comes back in its order', () => {
  const device = storage();
  expect(keepTally(book, 'quay', ['honey', 'jam', 'honey'], device)).toBe(true);
  expect(keptTally(book, 'quay', device)).toEqual(['honey', 'jam', 'honey']);
  expect(keptTally(book, 'gate', device)).toEqual([]);
  expect(unitsTapped(keptTally(book, 'quay', device))).toEqual({ honey: 2, jam: 1 });
});

test('an empty tally leaves nothing behind, and damage is no sale', () => {
  const device = storage();
  keepTally(book, 'quay', ['honey'], device);
  keepTally(book, 'quay', [], device);
  expect(device.length).toBe(0);
  device.setItem('cratebook.sales wrenfield spring-2027 quay', 'honey  <b> jam');
  expect(keptTally(book, 'quay', device)).toEqual(['honey', 'jam']);
});

test('a full device says so', () => {
  expect(keepTally(book, 'quay', ['honey'], storage(true))).toBe(false);
});
