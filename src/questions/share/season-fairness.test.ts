import { describe, expect, it } from 'vitest';
import { chairmanBound, worstOfSeason } from '../../../simulation/share-seasons.ts';
import { seeded } from '../../base/seeded.ts';
import { testBook } from '../../ledger/test-book.ts';
import { minutesWorked } from './minutes-worked.ts';
import { poolShare } from './pool-share.ts';
import { seasonFairness } from './season-fairness.ts';
import { shareOut } from './share-out.ts';

const DAY = '2027-02-01';

/** Two stalls of one jar each; ada worked 2 hours and ben 1 at both. */
function twoStalls() {
  const book = testBook({ honey: 800 }, ['ada', 'ben']);
  const stall = (name: string) =>
    book.setting('stall', {
      stall: name,
      host: 'market',
      starts: `${DAY}T09:00`,
      ends: `${DAY}T12:00`,
      shifts: [
        { seller: 'ada', from: '09:00', to: '10:30' },
        { seller: 'ada', from: '10:30', to: '11:00' },
        { seller: 'ben', from: `${DAY}T11:00`, to: `${DAY}T12:00` },
      ],
    });
  const close = (name: string) =>
    book.movement('stall-close', {
      stall: name,
      out: { honey: 1 },
      back: {},
      float: 0,
      cash: 800,
      cards: 0,
      cheques: 0,
    });
  const first = book.movement('shareout', {
    pool: 'stall:one',
    lines: { ada: { honey: 1 }, ben: {} },
  });
  const records = [...book.setup, stall('one'), stall('two'), close('one'), close('two'), first];
  return { book, records };
}

describe('what earlier share-outs owed', () => {
  it('is units credited less units due by minutes, seller by seller', () => {
    const { book, records } = twoStalls();
    const { sellers, worst } = seasonFairness(book.ledger(records));
    expect(sellers.map(({ seller, carried }) => [seller, carried.toFraction()])).toEqual([
      ['ada', '1/3'],
      ['ben', '-1/3'],
    ]);
    expect(worst).toBeCloseTo(1 / 3, 12);
  });

  it('is carried into the next: ben gets the second jar', () => {
    const { book, records } = twoStalls();
    const share = poolShare(book.ledger(records), 'stall:two');
    expect(share.ok && share.value.by).toBe('minutes');
    expect(share.ok && shareOut(share.value).totals).toEqual({ ada: 0, ben: 1 });
  });

  it('leaves out what set out to be otherwise: a lift, or a share by hand', () => {
    const { book, records } = twoStalls();
    const lifted = records.map((record) =>
      record.kind === 'shareout' ? { ...record, basis: 'lift' as const } : record,
    );
    expect(seasonFairness(book.ledger(lifted)).sellers).toEqual([]);
    const share = poolShare(book.ledger(lifted), 'stall:two');
    expect(share.ok && shareOut(share.value).totals).toEqual({ ada: 1, ben: 0 });
  });

  it('starts from minutes, all shifts of a seller together', () => {
    const { book, records } = twoStalls();
    const stall = book.ledger(records).setup.stalls.get('one');
    expect(stall && [...minutesWorked(stall)]).toEqual([
      ['ada', 120],
      ['ben', 60],
    ]);
  });
});

describe('a pool', () => {
  it.each([
    ['stall:nowhere', 'no_such_pool'],
    ['elsewhere', 'no_such_pool'],
    ['post', 'nothing_to_share'],
    ['stall:one', 'nothing_to_share'],
  ])('%s is refused: %s', (pool, kind) => {
    const { book, records } = twoStalls();
    const share = poolShare(book.ledger(records), pool);
    expect(!share.ok && share.refusal.kind).toBe(kind);
  });

  it('out of which more was shared than came in says of which product', () => {
    const { book, records } = twoStalls();
    const more = book.movement('shareout', { pool: 'stall:one', lines: { ben: { honey: 1 } } });
    const share = poolShare(book.ledger([...records, more]), 'stall:one');
    expect(share).toMatchObject({ refusal: { kind: 'shared_too_much', product: 'honey' } });
  });

  it('of posted orders goes evenly to every active seller', () => {
    const { book, records } = twoStalls();
    const order = book.movement('online', {
      order: 'W1',
      lines: { honey: 2 },
      paid: 1600,
      sent: 'post',
    });
    const share = poolShare(book.ledger([...records, order]), 'post');
    expect(share).toMatchObject({
      value: {
        by: 'even',
        sellers: [
          { seller: 'ada', weight: 1 },
          { seller: 'ben', weight: 1 },
        ],
      },
    });
  });
});

describe('over made seasons', () => {
  const season = { sellers: 8, present: 8, stalls: 20, products: 6 };

  // The best that can be promised is Tijdeman's bound; with everybody at every stall we keep it.
  it('carrying keeps everybody within the published bound', () => {
    for (let seed = 0; seed < 20; seed += 1) {
      const worst = worstOfSeason(seeded(seed), { ...season, carries: true });
      expect(worst).toBeLessThanOrEqual(chairmanBound(season.sellers));
    }
  });

  it('would be caught if nothing were carried', () => {
    const worsts = Array.from({ length: 20 }, (_, seed) =>
      worstOfSeason(seeded(seed), { ...season, carries: false }),
    );
    expect(Math.max(...worsts)).toBeGreaterThan(1);
  });
});
