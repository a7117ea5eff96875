import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { NO_PRIZE } from '../records/no-prize.ts';
import { handOutList } from './hand-out-list.ts';
import { prizeWaiver } from './prize-waiver.ts';
import { prizes } from './prizes.ts';
import { proceedsDue } from './proceeds-due.ts';

const book = testBook({ honey: 800 }, ['ada', 'ben', 'cy']);
const { movement, setting } = book;
const steps = [
  setting('level', { level: 'badge', units: 5, prize: 'Badge' }),
  setting('level', { level: 'shirt', units: 10, prize: 'Shirt', choices: ['small', 'large'] }),
  setting('level', { level: 'trip', units: 20, prize: 'Day trip', each: false }),
];
const sold = [
  movement('handover', { seller: 'ada', lines: { honey: 10 } }),
  movement('handover', { seller: 'ben', lines: { honey: 4 } }),
  movement('handover', { seller: 'cy', lines: { honey: 20 } }),
];

describe('prize steps', () => {
  it('are earned at exactly their units, on top of each other unless one takes their place', () => {
    const { sellers } = prizes(book.ledger([...steps, ...sold]));
    expect(sellers).toMatchObject([
      { seller: 'ada', credited: 10, steps: ['badge', 'shirt'], missing: ['shirt'] },
      { seller: 'ben', credited: 4, steps: [], missing: [] },
      { seller: 'cy', credited: 20, steps: ['trip'], missing: [] },
    ]);
  });

  it('are ordered by prize and choice once the choice is made', () => {
    const choice = setting('choice', { seller: 'ada', level: 'shirt', choice: 'large' });
    expect(prizes(book.ledger([...steps, ...sold, choice])).order).toEqual([
      { level: 'badge', prize: 'Badge', pieces: 1 },
      { level: 'shirt', prize: 'Shirt', choice: 'large', pieces: 1 },
      { level: 'trip', prize: 'Day trip', pieces: 1 },
    ]);
  });

  it('ask again where a choice is no longer offered', () => {
    const gone = setting('choice', { seller: 'ada', level: 'shirt', choice: 'medium' });
    const { sellers, order } = prizes(book.ledger([...steps, ...sold, gone]));
    expect(sellers[0]?.missing).toEqual(['shirt']);
    expect(order.map((line) => line.level)).not.toContain('shirt');
  });

  it('go when goods come back', () => {
    const back = movement('return', { seller: 'ada', lines: { honey: 1 } });
    expect(prizes(book.ledger([...steps, ...sold, back])).sellers[0]?.steps).toEqual(['badge']);
  });
});

describe('credit that is not sure', () => {
  const shared = movement('shareout', {
    pool: 'stall:quay',
    lines: { ben: { honey: 6 } },
  });
  const counted = movement('stall-close', {
    stall: 'quay',
    out: { honey: 6 },
    back: {},
    float: 0,
    cash: 0,
    cards: 0,
    cheques: 0,
  });
  const choice = setting('choice', { seller: 'ben', level: 'shirt', choice: 'small' });
  const of = (records: Parameters<typeof book.ledger>[0]) => {
    const { sellers, order, notShared } = prizes(book.ledger([...steps, ...sold, ...records]));
    return { ben: sellers[1], order, notShared };
  };

  it('out of a stall that is not settled earns a step, and is not ordered yet', () => {
    const before = of([shared, choice]);
    expect(before.ben).toMatchObject({
      credited: 10,
      confirmed: 4,
      pending: { stallNotSettled: 6, toBring: 0 },
      steps: ['badge', 'shirt'],
      sure: [],
    });
    expect(before.order.map(({ choice: what }) => what)).not.toContain('small');
    const after = of([shared, choice, counted]);
    expect(after.ben).toMatchObject({ confirmed: 10, sure: ['badge', 'shirt'] });
    expect(after.order).toContainEqual({
      level: 'shirt',
      prize: 'Shirt',
      choice: 'small',
      pieces: 1,
    });
  });

  it('is told apart from what is still to be brought and from what no seller has yet', () => {
    const online = movement('online', {
      order: 'O-1',
      seller: 'ben',
      lines: { honey: 3 },
      paid: 2400,
      sent: 'hand',
    });
    expect(of([online]).ben).toMatchObject({ credited: 4, confirmed: 4, pending: { toBring: 3 } });
    const brought = movement('handover', { seller: 'ben', lines: { honey: 3 } });
    expect(of([online, brought]).ben).toMatchObject({ credited: 7, pending: { toBring: 0 } });
    expect(of([counted]).notShared).toEqual({ 'stall:quay': 6 });
  });
});

describe('prizes that are done without, or that credit no longer reaches', () => {
  it('are not ordered and not missing where none was chosen, also without choices', () => {
    const none = (level: string) => setting('choice', { seller: 'ada', level, choice: NO_PRIZE });
    const { sellers, order } = prizes(
      book.ledger([...steps, ...sold, none('badge'), none('shirt')]),
    );
    expect(sellers[0]).toMatchObject({
      steps: ['badge', 'shirt'],
      missing: [],
      forgone: ['badge', 'shirt'],
    });
    expect(order).toEqual([{ level: 'trip', prize: 'Day trip', pieces: 1 }]);
  });

  it('stay for a leader to decide when credit goes back, and nothing becomes negative', () => {
    const choice = setting('choice', { seller: 'ada', level: 'shirt', choice: 'large' });
    const back = movement('return', { seller: 'ada', lines: { honey: 12 } });
    const ledger = book.ledger([...steps, ...sold, choice, back]);
    const { sellers, order } = prizes(ledger);
    expect(sellers[0]).toMatchObject({
      credited: 0,
      confirmed: 0,
      steps: [],
      notReached: ['shirt'],
    });
    expect(order.every(({ pieces }) => pieces > 0)).toBe(true);
    expect(handOutList(ledger, sellers)[0]).toEqual({
      seller: 'ada',
      name: 'ada',
      prizes: [
        {
          level: 'shirt',
          prize: 'Shirt',
          choice: 'large',
          choiceMissing: false,
          notReached: true,
        },
      ],
    });
  });

  it('stay on the hand-out list once ticked, whatever becomes of the credit', () => {
    const handed = '2027-06-12';
    const shirt = setting('choice', { seller: 'ada', level: 'shirt', choice: 'large', handed });
    const badge = setting('choice', { seller: 'ada', level: 'badge', choice: 'Badge', handed });
    const back = movement('return', { seller: 'ada', lines: { honey: 10 } });
    const ledger = book.ledger([...steps, ...sold, shirt, badge, back]);
    const { sellers } = prizes(ledger);
    expect(handOutList(ledger, sellers)[0]?.prizes).toEqual([
      {
        level: 'shirt',
        prize: 'Shirt',
        choice: 'large',
        handed,
        choiceMissing: false,
        notReached: false,
      },
      { level: 'badge', prize: 'Badge', handed, choiceMissing: false, notReached: false },
    ]);
  });

  it('change what the group keeps as one figure', () => {
    const terms = { basis: 'total' as const, steps: [{ from: 0, cents: 50 }] };
    const plain = setting('proceeds', terms);
    expect(prizeWaiver(book.ledger([...sold, plain]))).toBe(undefined);
    const waiving = setting('proceeds', { ...terms, waiver: { cents: 10 } });
    expect(prizeWaiver(book.ledger([...sold, waiving]))).toEqual({
      withPrizes: 1700,
      withoutPrizes: 2040,
      morePerUnit: 10,
      more: 340,
    });
  });
});

describe('proceeds by steps', () => {
  const terms = (basis: 'average' | 'total') =>
    setting('proceeds', {
      basis,
      steps: [
        { from: 0, cents: 50 },
        { from: 11, cents: 60 },
        { from: 12, cents: 75 },
      ],
    });

  it('compare the average exactly: 34 units of 3 sellers are more than 11, not 12', () => {
    expect(proceedsDue(book.ledger([...sold, terms('average')]))).toEqual({
      credited: 34,
      sellers: 3,
      centsPerUnit: 60,
      due: 34 * 60,
      settled: 0,
    });
  });

  it('or the total, less what was settled', () => {
    const settle = movement('settle', { proceeds: 1000 });
    expect(proceedsDue(book.ledger([...sold, terms('total'), settle]))).toMatchObject({
      centsPerUnit: 75,
      due: 34 * 75,
      settled: 1000,
    });
  });

  it('leave out sellers who are not active, but count their units', () => {
    const gone = setting('seller', { seller: 'cy', name: 'Cy', family: 'home', active: false });
    expect(proceedsDue(book.ledger([...sold, terms('average'), gone]))).toMatchObject({
      sellers: 2,
      centsPerUnit: 75,
    });
  });
});
