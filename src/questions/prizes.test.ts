import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
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
    expect(prizes(book.ledger([...steps, ...sold])).sellers).toEqual([
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
