import { expect, test } from 'vitest';
import { demoSeason } from '../../scenarios/demo/demo-season.ts';
import { Ledger } from '../ledger/ledger.ts';
import { isMovement } from '../records/record.ts';
import { balancesAfter, changedBalances } from './changed-balances.ts';

const records = demoSeason();

test('what a movement of the season moves is what adding the whole book up with it changes', () => {
  const movements = records.filter(isMovement).filter(({ replaces }) => replaces === undefined);
  const ledger = Ledger.of(records);
  let changes = 0;
  for (const movement of movements) {
    const again = { ...movement, id: 'once-more' };
    const quick = balancesAfter(ledger.balances, ledger.movesOf(again));
    const whole = changedBalances(ledger.balances, Ledger.of([...records, again]).balances);
    expect(quick, movement.kind).toEqual(whole);
    changes += quick.length;
  }
  expect(changes).toBeGreaterThan(movements.length);
});
