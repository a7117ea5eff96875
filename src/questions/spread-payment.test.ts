import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { type PaymentSpread, spreadFamilyPayment, spreadPayment } from './spread-payment.ts';

const cents = (spread: PaymentSpread) =>
  Object.fromEntries(spread.shares.map((share) => [share.seller, share.cents]));

describe('one payment spread over the sellers of a family', () => {
  // Votes and seats of OpenStax Contemporary Mathematics section 11.5: 6, 6, 2 share 10 and 11
  // seats by Hamilton's method (largest remainder) as 4, 4, 2 and 5, 5, 1.
  it.each([
    [10, { a: 4, b: 4, c: 2 }],
    [11, { a: 5, b: 5, c: 1 }],
  ])('gives the published largest-remainder shares of %i', (paid, shares) => {
    expect(cents(spreadPayment(paid, { a: 6, b: 6, c: 2 }))).toEqual(shares);
  });

  it('gives equal remainders to the earlier seller id', () => {
    expect(cents(spreadPayment(1, { zoe: 500, ada: 500 }))).toEqual({ ada: 1, zoe: 0 });
    expect(cents(spreadPayment(4, { c: 11, b: 11, a: 11 }))).toEqual({ a: 2, b: 1, c: 1 });
  });

  it('leaves sellers in credit out', () => {
    expect(cents(spreadPayment(1000, { ada: 3000, ben: -500 }))).toEqual({ ada: 1000, ben: 0 });
  });

  it('gives what is paid beyond all owed to the seller who owes most, first id on a tie', () => {
    const spread = spreadPayment(1100, { ada: 300, ben: 700 });
    expect(cents(spread)).toEqual({ ada: 300, ben: 800 });
    expect([spread.owed, spread.beyond, spread.beyondTo]).toEqual([1000, 100, 'ben']);
    expect(cents(spreadPayment(5, { ben: 0, ada: 0 }))).toEqual({ ada: 5, ben: 0 });
    expect(cents(spreadPayment(5, { ada: -9, ben: -2 }))).toEqual({ ada: 0, ben: 5 });
  });

  it('reads what is owed from the book', () => {
    const book = testBook({ honey: 800 }, ['ada', 'ben']);
    const ledger = book.ledger([
      book.movement('handover', { seller: 'ada', lines: { honey: 3 } }),
      book.movement('handover', { seller: 'ben', lines: { honey: 1 } }),
    ]);
    expect(cents(spreadFamilyPayment(ledger, 'home', 1600))).toEqual({ ada: 1200, ben: 400 });
    expect(spreadFamilyPayment(ledger, 'nobody', 0).shares).toEqual([]);
  });
});

type Spread = (paid: number, owed: Readonly<Record<string, number>>) => PaymentSpread;

const owedByFamily = fc.dictionary(
  fc.constantFrom('ada', 'ben', 'cai', 'dee'),
  fc.oneof(fc.integer({ min: -5000, max: 50_000 }), fc.integer({ min: 0, max: 2 ** 50 })),
  { minKeys: 1, noNullPrototype: true },
);

/** The rule itself: exact, within a unit of the quota, never above what is owed. */
function holdsFor(spread: Spread): void {
  fc.assert(
    fc.property(owedByFamily, fc.integer({ min: 0, max: 2 ** 51 }), (owed, paid) => {
      const answer = spread(paid, owed);
      const total = answer.shares.reduce((sum, share) => sum + share.cents, 0);
      expect(total).toBe(paid);
      const within = BigInt(paid - answer.beyond);
      expect(answer.beyond).toBe(Math.max(0, paid - answer.owed));
      for (const share of answer.shares) {
        const weight = BigInt(Math.max(share.owes, 0));
        const own = share.cents - (share.seller === answer.beyondTo ? answer.beyond : 0);
        expect(BigInt(own)).toBeLessThanOrEqual(weight);
        if (answer.owed === 0) continue;
        const exact = within * weight;
        const distance = BigInt(own) * BigInt(answer.owed) - exact;
        expect(distance < BigInt(answer.owed) && -distance < BigInt(answer.owed)).toBe(true);
      }
    }),
    { seed: 7, numRuns: 300 },
  );
}

describe('the spreading rule', () => {
  it('holds for any family and payment', () => holdsFor(spreadPayment));

  it('is told apart from paying off one seller after the other', () => {
    const inTurn: Spread = (paid, owed) => {
      const honest = spreadPayment(paid, owed);
      let left = paid - honest.beyond;
      const shares = honest.shares.map((share) => {
        const own = Math.min(left, Math.max(share.owes, 0));
        left -= own;
        return { ...share, cents: own + (share.seller === honest.beyondTo ? honest.beyond : 0) };
      });
      return { ...honest, shares };
    };
    expect(() => holdsFor(inTurn)).toThrow();
  });

  it('is told apart from rounding each share by itself', () => {
    const rounded: Spread = (paid, owed) => {
      const honest = spreadPayment(paid, owed);
      const within = paid - honest.beyond;
      const shares = honest.shares.map((share) => ({
        ...share,
        cents:
          Math.round((within * Math.max(share.owes, 0)) / (honest.owed || 1)) +
          (share.seller === honest.beyondTo ? honest.beyond : 0),
      }));
      return { ...honest, shares };
    };
    expect(() => holdsFor(rounded)).toThrow();
  });
});
