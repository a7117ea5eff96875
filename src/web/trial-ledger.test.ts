import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoSeason } from '../../scenarios/demo/demo-season.ts';
import { Ledger } from '../ledger/ledger.ts';
import { type BookRecord, isMovement, type RecordOf } from '../records/record.ts';
import { TrialLedger } from './trial-ledger.ts';

const records = demoSeason();
const movements = records.filter(isMovement).filter(({ replaces }) => replaces === undefined);
const START = 120;

let made = 0;
function newId(): string {
  made += 1;
  return `made-${made}`;
}

function removalOf({ id, at }: BookRecord): RecordOf<'void'> {
  return { id: newId(), at, by: 'manager', kind: 'void', voids: id, reason: 'Only supposed' };
}

/** A record of the season arrives, or some of its movements are supposed once more. */
const step = fc.oneof(
  fc.constant('arrives' as const),
  fc.array(fc.constantFrom(...movements), { minLength: 1, maxLength: 3 }),
);

test('supposing one thing after another is adding the whole book up with each', () => {
  fc.assert(
    fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
      const book = Ledger.of(records.slice(0, START));
      const trial = new TrialLedger(removalOf);
      for (const what of steps) {
        if (what === 'arrives')
          for (const record of records.slice(book.size, book.size + 5)) book.add(record);
        else {
          const supposed = what.map((movement) => ({ ...movement, id: newId() }));
          const whole = Ledger.of([...book.standing.records(), ...supposed]);
          expect(trial.suppose(book, supposed).balances.toAccounts()).toEqual(
            whole.balances.toAccounts(),
          );
        }
      }
    }),
    { numRuns: 60 },
  );
});
