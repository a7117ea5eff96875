import { describe, expect, it } from 'vitest';
import { demoHeader, demoSeason } from '../../scenarios/demo/demo-season.ts';
import { makeSeason } from '../../simulation/season-maker.ts';
import { Ledger } from '../../src/ledger/ledger.ts';
import { exportAccounts } from '../../src/statements/export-accounts.ts';
import { type PlainBalances, plainBalances, programs } from './independent-ledgers.ts';

/**
 * The accounts export, recomputed by two independent ledgers from Debian (hledger 1.25 and ledger
 * 3.3.0 in bookworm): balances of every account and commodity must equal the book's own.
 */

const SEASONS = 50;

function journalOf(ledger: Ledger): string {
  return [...exportAccounts(demoHeader, ledger)].join('');
}

function ownBalances(ledger: Ledger): PlainBalances {
  return plainBalances(ledger.balances.toAccounts(), ledger.setup.season?.currency ?? '');
}

describe.each(['hledger', 'ledger'] as const)('%s', (name) => {
  const recompute = programs[name];

  it('finds the balances of the demo season', () => {
    const ledger = Ledger.of(demoSeason());
    expect(recompute(journalOf(ledger))).toEqual(ownBalances(ledger));
  });

  it(`finds the balances of ${SEASONS} made seasons`, () => {
    // All in one journal, each season's accounts under its seed: one start of the program for all.
    const journals: string[] = [];
    const own: Record<string, number> = {};
    for (let seed = 1; seed <= SEASONS; seed += 1) {
      const ledger = Ledger.of(makeSeason(seed));
      journals.push(journalOf(ledger).replaceAll(/^ {2}/gm, `  seed-${seed}:`));
      for (const [account, amount] of Object.entries(ownBalances(ledger))) {
        own[`seed-${seed}:${account}`] = amount;
      }
    }
    expect(recompute(journals.join('\n'))).toEqual(own);
  });

  it('teeth: notices one unit more between two accounts', () => {
    const ledger = Ledger.of(demoSeason());
    const changed = journalOf(ledger)
      .replace('stock:supplier  -96 "honey"', 'stock:supplier  -97 "honey"')
      .replace('stock:stockroom  96 "honey"', 'stock:stockroom  97 "honey"');
    expect(recompute(changed)).not.toEqual(ownBalances(ledger));
  });

  it('teeth: refuses a transaction that does not balance', () => {
    const journal = journalOf(Ledger.of(demoSeason()));
    const changed = journal.replace('stock:supplier  -96 "honey"', 'stock:supplier  -97 "honey"');
    expect(() => recompute(changed)).toThrow();
  });
});
