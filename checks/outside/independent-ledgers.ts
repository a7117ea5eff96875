import { execFileSync } from 'node:child_process';
import { minorDigits } from '../../src/base/currency.ts';
import type { BalancesByAccount } from '../../src/ledger/balances.ts';

/**
 * Two plain-text ledgers that others wrote, from Debian's packages `hledger` and `ledger`: each
 * works balances out from a journal by itself. `npm test` installs them where they are missing.
 */

/** Account and commodity → whole units, or minor units of a currency. */
export type PlainBalances = Readonly<Record<string, number>>;

export type LedgerProgram = (journal: string) => PlainBalances;

export const programs: Readonly<Record<'hledger' | 'ledger', LedgerProgram>> = {
  hledger: (journal) => {
    const options = ['-f', '-', 'balance', '--flat', '-N', '--layout=bare', '-O', 'csv'];
    return collected(
      run('hledger', options, journal)
        .split('\n')
        .slice(1)
        .flatMap((line) => {
          const [account, commodity, amount] = line.split(',').map((cell) => cell.slice(1, -1));
          return account === undefined || commodity === undefined || amount === undefined
            ? []
            : [[account, commodity, amount] as const];
        }),
    );
  },
  ledger: (journal) => {
    const form = '%(account)|%(join(display_total))\n';
    const options = ['-f', '-', 'balance', '--flat', '--no-total', '--balance-format', form];
    return collected(
      run('ledger', options, journal)
        .split('\n')
        .flatMap((line) => {
          const [account = '', amounts = ''] = line.split('|');
          return amounts.split('\\n').flatMap((text) => {
            const [amount, commodity] = text.trim().split(' ');
            return amount === undefined || commodity === undefined
              ? []
              : [[account, commodity.replaceAll('"', ''), amount] as const];
          });
        }),
    );
  },
};

/** The book's own balances under the names that the exported journal gives accounts. */
export function plainBalances(balances: BalancesByAccount, currency: string): PlainBalances {
  const plain: Record<string, number> = {};
  for (const [account, minor] of Object.entries(balances.money)) {
    plain[`money:${account} ${currency}`] = minor;
  }
  for (const [product, accounts] of Object.entries(balances.stock)) {
    for (const [account, units] of Object.entries(accounts)) {
      plain[`stock:${account} ${product}`] = units;
    }
  }
  for (const [product, accounts] of Object.entries(balances.credit)) {
    for (const [account, units] of Object.entries(accounts)) {
      plain[`credit:${account} cr.${product}`] = units;
    }
  }
  return plain;
}

function run(program: string, options: readonly string[], journal: string): string {
  return execFileSync(program, options, {
    input: journal,
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
    stdio: 'pipe',
  });
}

function collected(rows: readonly (readonly [string, string, string])[]): PlainBalances {
  const plain: Record<string, number> = {};
  for (const [account, commodity, amount] of rows) {
    const whole = wholeOf(amount, /^[A-Z]{3}$/.test(commodity) ? minorDigits(commodity) : 0);
    if (whole !== 0) plain[`${account} ${commodity}`] = whole;
  }
  return plain;
}

/** `-12.5` with two digits is -1250. */
function wholeOf(decimal: string, digits: number): number {
  const [major = '', minor = ''] = decimal.split('.');
  return Number(`${major}${minor.padEnd(digits, '0')}`);
}
