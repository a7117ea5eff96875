import { describe, expect, it } from 'vitest';
import { shareOut } from './share-out.ts';

const three = [
  { seller: 'ada', weight: 6 },
  { seller: 'ben', weight: 6 },
  { seller: 'cleo', weight: 2 },
];

describe('a share-out', () => {
  // OpenStax Contemporary Mathematics, section 11.5: 6, 6 and 2 at 10 and at 11.
  it('goes by largest remainder, told by seller and product', () => {
    expect(shareOut({ products: { honey: 10 }, sellers: three })).toMatchObject({
      lines: { ada: { honey: 4 }, ben: { honey: 4 }, cleo: { honey: 2 } },
      totals: { ada: 4, ben: 4, cleo: 2 },
      left: { honey: 0 },
      beyond: 0,
      tied: [],
    });
    expect(shareOut({ products: { honey: 11 }, sellers: three }).totals).toEqual({
      ada: 5,
      ben: 5,
      cleo: 1,
    });
  });

  it('never takes a unit away because the pool grew, by the divisor method', () => {
    const losses = (method: 'remainder' | 'divisor') => {
      const shared = Array.from({ length: 40 }, (_, before) =>
        Object.values(shareOut({ products: { honey: before + 1 }, sellers: three, method }).totals),
      );
      return shared.filter((totals, at) =>
        totals.some((units, place) => units < (shared[at - 1]?.[place] ?? 0)),
      ).length;
    };
    expect(losses('divisor')).toBe(0);
    expect(losses('remainder')).toBeGreaterThan(0);
  });

  it('goes on by rota where the last one stopped', () => {
    const dealt = (turn: number) =>
      shareOut({ products: { honey: 2, jam: 2 }, sellers: three, method: 'rota', turn }).totals;
    expect(dealt(0)).toEqual({ ada: 2, ben: 1, cleo: 1 });
    expect(dealt(4)).toEqual({ ada: 1, ben: 2, cleo: 1 });
  });

  it('tells due as decimals and the worst of what is off, what was carried included', () => {
    const shared = shareOut({
      products: { honey: 3 },
      sellers: [
        { seller: 'ada', weight: 1, carried: -0.4 },
        { seller: 'ben', weight: 1, carried: 0.4 },
      ],
    });
    expect(shared.totals).toEqual({ ada: 2, ben: 1 });
    expect(shared.due).toEqual({ ada: 1.5, ben: 1.5 });
    expect(shared.worst).toBe(0.1);
  });

  it('gives a weight of 0 nothing but its locked cells', () => {
    const sellers = [
      { seller: 'ada', weight: 5 },
      { seller: 'ben', weight: 0, locked: { jam: 1 } },
      { seller: 'cleo', weight: 0 },
    ];
    const { lines } = shareOut({ products: { honey: 2, jam: 2 }, sellers });
    expect(lines).toEqual({ ada: { honey: 2, jam: 1 }, ben: { jam: 1 }, cleo: {} });
  });

  it('names who had to take what others have locked', () => {
    const locked = { honey: 0 };
    const shared = shareOut({
      products: { honey: 6, jam: 2 },
      sellers: three.map((each) => (each.seller === 'ada' ? each : { ...each, locked })),
    });
    expect(shared).toMatchObject({
      forced: [{ sellers: ['ada'], products: ['honey'] }],
      totals: { ada: 6 },
    });
  });
});
