import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currentBuyer } from './buyer.ts';
import { stallSheet } from './stall-sheet.ts';
import { anyPhone, pen } from './test-entries.ts';

const now = (lines: Parameters<typeof stallSheet>[0], phone = 'K7M') =>
  currentBuyer(stallSheet(lines).entries, phone);

describe('the buyer who is served now', () => {
  it('gathers what is tapped until it has paid', () => {
    const on = pen('K7M');
    const sales = [
      on.write('sold', { lines: { honey: 1 } }),
      on.write('sold', { lines: { jam: 1 } }),
      on.write('sold', { lines: { honey: 1 } }),
    ];
    expect(now(sales)).toMatchObject({ lines: { honey: 2, jam: 1 }, units: 3, paid: undefined });
    const paid = on.write('paid', { tender: 'cash', handed: 3000 });
    expect(now([...sales, paid])).toMatchObject({ units: 3, paid, last: paid });
    const next = on.write('sold', { lines: { jam: 1 } });
    expect(now([...sales, paid, next])).toMatchObject({ lines: { jam: 1 }, units: 1, last: next });
  });

  it('is another one after two minutes without a tap, not while money is looked for', () => {
    const on = pen('K7M');
    const first = on.write('sold', { lines: { honey: 1 } });
    on.wait(118);
    const soon = on.write('sold', { lines: { honey: 1 } });
    on.wait(119);
    const late = on.write('sold', { lines: { honey: 1 } });
    expect(now([first, soon]).units).toBe(2);
    expect(now([first, soon, late]).units).toBe(1);
    on.wait(600);
    expect(now([first, soon, late, on.write('paid')]).units).toBe(1);
  });

  it('is not mixed with the other phone’s, and comes back when its last tap is undone', () => {
    const [on, other] = [pen('K7M'), pen('P3D')];
    const sale = on.write('sold', { lines: { honey: 1 } });
    const theirs = other.write('sold', { lines: { jam: 4 } });
    const paid = on.write('paid', { tender: 'card' });
    const undo = on.write('undo', { of: [paid.id] });
    expect(now([sale, theirs, paid, undo])).toMatchObject({
      units: 1,
      paid: undefined,
      last: sale,
    });
    expect(now([], 'K7M')).toEqual({ lines: {}, units: 0, paid: undefined, last: undefined });
  });

  it('has been every sale’s buyer once, as a walk forwards finds too', () => {
    const walks = (steps: Parameters<typeof stallSheet>[0], pauseMs = 120_000): boolean => {
      const { entries } = stallSheet(steps);
      let units = 0;
      let before: (typeof entries)[number] | undefined;
      for (const entry of entries.filter(({ what }) => what === 'sold' || what === 'paid')) {
        const apart = before === undefined ? 0 : Date.parse(entry.at) - Date.parse(before.at);
        if (entry.what === 'sold') {
          units = before?.what === 'paid' || apart >= pauseMs ? 1 : units + 1;
        } else if (before?.what === 'paid') units = 0;
        before = entry;
      }
      return currentBuyer(entries, 'K7M').units === units;
    };
    fc.assert(fc.property(anyPhone('K7M'), (steps) => walks(steps)));
    const endless = fc.property(anyPhone('K7M'), (steps) => walks(steps, 1e9));
    expect(fc.check(endless).failed).toBe(true);
  });
});
