import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StallEntry } from '../../records/stall-entry.ts';
import { type StallSheet, stallSheet } from './stall-sheet.ts';
import { anyPhone, pen } from './test-entries.ts';

describe('the sheet of a stall', () => {
  const one = pen('K7M');
  const two = pen('P3D', '2027-04-03T09:30:00');
  const opening = one.write('open', {
    lines: { honey: 24, jam: 12 },
    pieces: { '100': 10, '500': 2 },
    names: ['Robin Marsh', 'Sam Winter'],
  });
  const first = [
    opening,
    one.write('sold', { lines: { honey: 1 } }),
    one.write('sold', { lines: { honey: 1 } }),
    one.write('drop', { pieces: { '2000': 3 }, names: ['Robin Marsh', 'Sam Winter'] }),
  ];
  const sale = two.write('sold', { lines: { jam: 1 } });
  const second = [
    sale,
    two.write('brought', { lines: { jam: 6 } }),
    two.write('undo', { of: [sale.id] }),
    two.write('sold', { lines: { jam: 2 } }),
    two.write('drop', { pieces: { '1000': 1, '500': 1 }, names: ['Ann Holt', 'Sam Winter'] }),
  ];

  it('adds up what both phones wrote', () => {
    const sheet = stallSheet([...first, ...second]);
    expect(sheet).toMatchObject({
      out: { honey: 24, jam: 18 },
      sold: { honey: 2, jam: 2 },
      soldUnits: 4,
      left: { honey: 22, jam: 16 },
      dropped: 7500,
      phones: ['K7M', 'P3D'],
    });
    expect(sheet.opening).toMatchObject({ cash: 2000, toChoose: false });
    expect(sheet.drops).toHaveLength(2);
  });

  it('adds up a product whose id every object already has', () => {
    const on = pen('K7M');
    const sales = [1, 2].map((units) => on.write('sold', { lines: { constructor: units } }));
    expect(stallSheet(sales).soldUnits).toBe(3);
  });

  it('is the same from lines that came twice, in any order', () => {
    const mixed = [...second, ...first, ...second].reverse();
    expect(stallSheet(mixed)).toEqual(stallSheet([...first, ...second]));
  });

  it('asks where two phones counted the same end, and adds where it was said', () => {
    const other = two.write('open', { lines: { honey: 6 }, cents: 500 });
    const asked = stallSheet([opening, other]);
    expect(asked.opening).toMatchObject({ toChoose: true, lines: { honey: 6 }, cash: 500 });
    const both = two.write('both', { of: [opening.id, other.id] });
    expect(stallSheet([opening, other, both]).opening).toMatchObject({
      toChoose: false,
      lines: { honey: 30, jam: 12 },
      cash: 2500,
    });
    const only = two.write('undo', { of: [other.id] });
    expect(stallSheet([opening, other, only]).opening).toMatchObject({
      toChoose: false,
      lines: { honey: 24, jam: 12 },
    });
    const third = one.write('open', { lines: { honey: 1 } });
    expect(stallSheet([opening, other, both, third]).opening.toChoose).toBe(true);
  });
});

describe('two phones of one stall', () => {
  const twoPhones = fc.tuple(anyPhone('K7M'), anyPhone('P3D'), fc.array(fc.nat(60)));

  it('lose nothing and double nothing, however their lines come together', () => {
    fc.assert(fc.property(twoPhones, (phones) => mergesWhole(phones, stallSheet)));
  });

  it.each<readonly [fault: string, merge: (lines: readonly StallEntry[]) => StallSheet]>([
    ['counts a line as often as it came', (lines) => stallSheet(lines.map(withNewId))],
    ['keeps one line a second', (lines) => stallSheet(onePerSecond(lines))],
    ['takes the lines of the last phone alone', (lines) => stallSheet(lastPhone(lines))],
  ])('would be caught with a merge that %s', (_fault, merge) => {
    const caught = fc.check(fc.property(twoPhones, (phones) => mergesWhole(phones, merge)));
    expect(caught.failed).toBe(true);
  });
});

type Phones = [one: StallEntry[], two: StallEntry[], again: number[]];

/** The merged sheet has what each phone's own sheet has, added up by another way. */
function mergesWhole(
  [one, two, again]: Phones,
  merge: (lines: readonly StallEntry[]) => StallSheet,
): boolean {
  const all = [...one, ...two];
  const doubled = again.flatMap((at) => all.at(at % Math.max(1, all.length)) ?? []);
  const merged = merge([...doubled, ...two, ...one]);
  const apart = [one, two].map((lines) => stallSheet(lines));
  const sum = (of: (sheet: StallSheet) => number) =>
    apart.reduce((total, sheet) => total + of(sheet), 0);
  return (
    merged.soldUnits === sum(({ soldUnits }) => soldUnits) &&
    merged.dropped === sum(({ dropped }) => dropped) &&
    (merged.out.honey ?? 0) === sum(({ out }) => out.honey ?? 0) &&
    merged.entries.length === sum(({ entries }) => entries.length)
  );
}

function withNewId(entry: StallEntry, at: number): StallEntry {
  return { ...entry, id: `${entry.id}x${at}` };
}

function onePerSecond(lines: readonly StallEntry[]): StallEntry[] {
  return [...new Map(lines.map((line) => [line.at, line])).values()];
}

function lastPhone(lines: readonly StallEntry[]): StallEntry[] {
  const last = lines.at(-1)?.id.slice(0, 3) ?? '';
  return lines.filter(({ id }) => id.startsWith(last));
}
