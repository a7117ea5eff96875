import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { soldAgainstGoal } from './sold-against-goal.ts';

const book = testBook({ honey: 800, jam: 650 }, ['ada']);
const seller = (id: string, more: { goal?: number; active?: boolean; family?: string }) =>
  book.setting('seller', { seller: id, name: id, family: 'home', active: true, ...more });

describe('sold against goal', () => {
  it('works out an example: goods out and back, a share-out, the next step', () => {
    const ledger = book.ledger([
      seller('ada', { goal: 20 }),
      book.setting('level', { level: 'mug', units: 8, prize: 'Mug' }),
      book.setting('level', { level: 'cap', units: 15, prize: 'Cap' }),
      book.movement('handover', { seller: 'ada', lines: { honey: 10, jam: 2 } }),
      book.movement('return', { seller: 'ada', lines: { honey: 3 } }),
      book.movement('shareout', { pool: 'stall:quay', lines: { ada: { honey: 2 } } }),
    ]);
    expect(soldAgainstGoal(ledger, 'home')).toEqual([
      {
        seller: 'ada',
        name: 'ada',
        sold: 11,
        goal: 20,
        toGoal: 9,
        next: { level: 'cap', units: 15, left: 4 },
      },
    ]);
  });

  it('beyond the goal nothing is left, and beyond the last step there is no next', () => {
    const ledger = book.ledger([
      seller('ada', { goal: 5 }),
      book.movement('handover', { seller: 'ada', lines: { honey: 7 } }),
    ]);
    expect(soldAgainstGoal(ledger, 'home')).toEqual([
      { seller: 'ada', name: 'ada', sold: 7, goal: 5, toGoal: 0 },
    ]);
  });

  it('tells the family’s own sellers only, by name and never by units', () => {
    const ledger = book.ledger([
      seller('zoe', {}),
      seller('cara', { active: false }),
      seller('dan', { family: 'other' }),
      book.movement('handover', { seller: 'zoe', lines: { honey: 9 } }),
    ]);
    expect(soldAgainstGoal(ledger, 'home').map((each) => each.seller)).toEqual(['ada', 'zoe']);
    expect(soldAgainstGoal(ledger, 'none')).toEqual([]);
  });
});
