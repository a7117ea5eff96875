import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeDue, piecesInHand, tenderOffers } from './tender.ts';

const currencies = ['USD', 'EUR', 'GBP', 'CAD', 'AUD', 'NZD', 'JPY'];
const anyCurrency = fc.constantFrom(...currencies);
const anyTotal = fc.integer({ min: 1, max: 60_000 });

describe('what a buyer is likely to hand over', () => {
  it('is the exact sum and the next full amounts, as counted by hand', () => {
    expect(tenderOffers(850, 'USD')).toEqual([850, 900, 1000, 2000, 5000, 10000]);
    expect(tenderOffers(2350, 'USD')).toEqual([2350, 2400, 2500, 3000, 4000, 5000]);
    expect(tenderOffers(2000, 'EUR')).toEqual([2000, 5000, 10000, 20000, 50000]);
    expect(tenderOffers(850, 'JPY')).toEqual([850, 900, 1000, 2000, 5000, 10000]);
    expect(tenderOffers(0, 'USD')).toEqual([]);
    expect(tenderOffers(350, 'XXX')).toEqual([350]);
  });

  it('never offers too little, nor an amount with a piece to spare', () => {
    fc.assert(fc.property(anyTotal, anyCurrency, (total, currency) => isSound(total, currency)));
    const roundsDown = (total: number) => [total, Math.floor(total / 1000) * 1000];
    const isCaught = fc.check(
      fc.property(anyTotal, anyCurrency, (total, currency) =>
        isSound(total, currency, roundsDown(total)),
      ),
    );
    expect(isCaught.failed).toBe(true);
  });
});

function isSound(total: number, currency: string, offers = tenderOffers(total, currency)): boolean {
  const [exact, ...more] = offers;
  const isUpwards = more.every((amount, at) => amount > (more[at - 1] ?? total));
  const hasNoneToSpare = more.every((amount) =>
    piecesInHand(currency).some((value) => amount % value === 0 && amount - value < total),
  );
  return exact === total && isUpwards && hasNoneToSpare;
}

describe('change', () => {
  it('is worked out as by hand', () => {
    expect(changeDue(2350, 3000, 'USD')).toEqual({
      change: 650,
      pieces: [
        { value: 500, count: 1 },
        { value: 100, count: 1 },
        { value: 25, count: 2 },
      ],
      rest: 0,
    });
    expect(changeDue(850, 850, 'USD')).toEqual({ change: 0, pieces: [], rest: 0 });
    expect(changeDue(850, 800, 'USD')).toEqual({ change: -50, pieces: [], rest: 0 });
    expect(changeDue(855, 1000, 'NZD').rest).toBe(5);
  });

  it('comes back whole, and with the sum makes what was handed over', () => {
    const adds = (total: number, handed: number, currency: string): boolean => {
      const { change, pieces, rest } = changeDue(total, handed, currency);
      const given = pieces.reduce((sum, { value, count }) => sum + value * count, rest);
      return total + given === handed && given === change;
    };
    fc.assert(
      fc.property(anyTotal, fc.nat(20_000), anyCurrency, (total, more, currency) =>
        adds(total, total + more, currency),
      ),
    );
  });

  it.each(currencies)(
    'takes the fewest pieces of %s, held against every way there is',
    (currency) => {
      const fewest = fewestPieces(piecesInHand(currency), 3000);
      const taken = (change: number): number =>
        changeDue(0, change, currency).pieces.reduce((sum, { count }) => sum + count, 0);
      for (let change = 1; change <= 3000; change += 1) {
        if (changeDue(0, change, currency).rest > 0) continue;
        expect([change, taken(change)]).toEqual([change, fewest[change]]);
      }
    },
  );

  it('would be caught where the largest piece first is not the fewest', () => {
    expect(fewestPieces([4, 3, 1], 6)[6]).toBe(2);
  });
});

/** The fewest pieces of each amount, by trying the last piece of every value (Bellman). */
function fewestPieces(values: readonly number[], most: number): number[] {
  const fewest = [0];
  for (let amount = 1; amount <= most; amount += 1) {
    const before = values.filter((value) => value <= amount).map((value) => fewest[amount - value]);
    fewest.push(1 + Math.min(...before.map((pieces) => pieces ?? Number.POSITIVE_INFINITY)));
  }
  return fewest;
}
