import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PoolShare } from './pool-share.ts';
import { type SheetChanges, shareSheet } from './share-sheet.ts';

const pool: PoolShare = {
  products: { honey: 7, jam: 4 },
  sellers: [
    { seller: 'ada', weight: 120 },
    { seller: 'ben', weight: 60 },
  ],
  by: 'minutes',
  method: 'remainder',
};
const sheetOf = (changes: SheetChanges, from = pool) => {
  const sheet = shareSheet(from, changes);
  if (!sheet.ok) throw new Error(sheet.refusal.kind);
  return sheet.value;
};

describe('a share-out sheet', () => {
  it('is filled in fairly at once', () => {
    const { shared, check, by } = sheetOf({ locked: {} });
    expect(shared.totals).toEqual({ ada: 7, ben: 4 });
    expect(check.left).toBe(0);
    expect(by).toBe('minutes');
  });

  it('shares the rest around a locked cell', () => {
    const { shared } = sheetOf({ locked: { ben: { honey: 4 } } });
    expect(shared.lines.ben?.honey).toBe(4);
    expect(shared.lines.ada?.honey).toBe(3);
    expect(shared.totals).toEqual({ ada: 7, ben: 4 });
  });

  it('takes parts by hand, and gives a seller who is only listed what is locked', () => {
    const { shared, by } = sheetOf({
      byHand: { ben: 1 },
      locked: { cy: { jam: 2 } },
      also: ['cy'],
    });
    expect(by).toBe('hand');
    expect(shared.totals).toEqual({ ada: 0, ben: 9, cy: 2 });
  });

  it('says exactly why nothing can be shared around what was fixed', () => {
    const refusalOf = (changes: SheetChanges) => {
      const sheet = shareSheet(pool, changes);
      return sheet.ok ? undefined : sheet.refusal;
    };
    expect(refusalOf({ locked: { ada: { honey: 5 }, ben: { honey: 3 } } })).toEqual({
      kind: 'locked_too_much',
      product: 'honey',
      locked: 8,
      pool: 7,
    });
    expect(refusalOf({ locked: {}, byHand: { ada: 0 } })).toEqual({ kind: 'no_weight' });
    const huge = { ada: Number.MAX_SAFE_INTEGER };
    expect(refusalOf({ locked: {}, byHand: huge })).toEqual({ kind: 'weights_too_large' });
  });

  it('keeps every lock and gives out every product that somebody may still take', () => {
    const cell = fc.integer({ min: 0, max: 2 });
    const changes = fc.record({
      locked: fc.dictionary(
        fc.constantFrom('ada', 'ben'),
        fc.dictionary(fc.constantFrom('honey', 'jam'), cell),
      ),
    });
    fc.assert(fc.property(changes, (change) => holds(change, sheetOf(change).shared.lines)));
    // Teeth: a sheet that forgets one locked cell is caught.
    const change = { locked: { ben: { honey: 2 } } };
    const { lines } = sheetOf(change).shared;
    expect(holds(change, { ...lines, ben: { ...lines.ben, honey: 3 } })).toBe(false);
  });
});

function holds(
  { locked }: SheetChanges,
  lines: Readonly<Record<string, Readonly<Record<string, number>>>>,
): boolean {
  for (const [seller, cells] of Object.entries(locked)) {
    for (const [product, units] of Object.entries(cells)) {
      if ((lines[seller]?.[product] ?? 0) !== units) return false;
    }
  }
  return Object.entries(pool.products).every(([product, units]) => {
    const given = pool.sellers.reduce(
      (sum, { seller }) => sum + (lines[seller]?.[product] ?? 0),
      0,
    );
    const open = pool.sellers.some(({ seller }) => locked[seller]?.[product] === undefined);
    return open ? given === units : given <= units;
  });
}
