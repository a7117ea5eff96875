import { describe, expect, it } from 'vitest';
import { readLiftProblem, worthScale } from './lift-problem.ts';

const fine = {
  pool: 12,
  sellers: [{ seller: 'ada', credited: 38, goal: 40 }],
  steps: [{ units: 50, worth: 2.5 }],
};

function with_(parts: object): string {
  return JSON.stringify({ ...fine, ...parts });
}

describe('a lift problem', () => {
  it('is taken as it is', () => {
    const read = readLiftProblem(with_({}));
    expect(read.ok && read.value).toEqual(fine);
  });

  it.each([
    ['an empty pool', with_({ pool: 0 }), 'pool', 'at least one unit'],
    ['a negative pool', with_({ pool: -1 }), 'pool', 'whole units'],
    ['half a unit', with_({ pool: 0.5 }), 'pool', 'whole units'],
    ['no sellers', with_({ sellers: [] }), 'sellers', 'a list of sellers'],
    ['no credit', with_({ sellers: [{ seller: 'ada' }] }), 'sellers.0.credited', 'whole units'],
    [
      'a negative credit',
      with_({ sellers: [{ seller: 'ada', credited: -3 }] }),
      'sellers.0.credited',
      'whole units',
    ],
    [
      'a seller twice',
      with_({ sellers: [fine.sellers[0], fine.sellers[0]] }),
      'sellers.1.seller',
      '',
    ],
    ['a negative worth', with_({ steps: [{ units: 5, worth: -1 }] }), 'steps.0.worth', '0 or more'],
    ['a step without units', with_({ steps: [{ worth: 1 }] }), 'steps.0.units', 'whole units'],
    [
      'worths that are not exact',
      with_({ steps: [{ units: 5, worth: 1 / 3 }] }),
      'steps',
      'decimals',
    ],
    [
      'a pool too large for the table',
      with_({
        pool: 900_000_000,
        sellers: [{ seller: 'ada', credited: 0, goal: 999_999_999 }],
      }),
      'pool',
      'at most',
    ],
  ])('is refused with %s: one line says where and what is wanted', (_, text, field, wanted) => {
    const read = readLiftProblem(text);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.refusal.field).toBe(field);
    expect(read.refusal.wanted).toContain(wanted);
  });

  it('makes decimal worths whole by the smallest power of ten', () => {
    expect(worthScale([1, 2])).toBe(1);
    expect(worthScale([0.1, 0.25])).toBe(100);
    expect(worthScale([1 / 3])).toBeUndefined();
    expect(worthScale([99_999_999.5])).toBeUndefined();
  });
});
