import { assert } from '../../../src/base/assert.ts';
import type { Ledger } from '../../../src/ledger/ledger.ts';
import { isMovement } from '../../../src/records/record.ts';
import { productName, sellerName } from '../../../src/statements/account-name.ts';
import { say } from '../../../src/web/say.ts';

/** What the things of a season are called, by their short ids: pages show names, never ids. */
export interface Names {
  readonly currency: string;
  of(id: string): string;
  /** Units in a case of a product. */
  caseOf(product: string): number;
  /** Words by which a record stands in a list: a payment's receipt, a debit's amount. */
  paperOf(record: string): string;
}

export function namesOf({ setup, standing }: Ledger): Names {
  const names = new Map<string, string>();
  const known = (id: string, name: string): void => {
    assert((names.get(id) ?? name) === name, `${id} is one thing`);
    names.set(id, name);
  };
  for (const { product, name } of setup.products.values()) known(product, name);
  for (const { family, name } of setup.families.values()) known(family, name);
  for (const { seller, name } of setup.sellers.values()) known(seller, name);
  for (const { host, name } of setup.hosts.values()) known(host, name);
  for (const { neighbour, name } of setup.neighbours.values()) known(neighbour, name);
  for (const { level, prize } of setup.levels.values()) known(level, prize);
  const currency = setup.season?.currency ?? '';
  return {
    currency,
    of: (id) => names.get(id) ?? id,
    caseOf: (product) => setup.products.get(product)?.case ?? 1,
    paperOf: (id) => {
      const record = standing.get(id);
      if (record?.kind === 'payment') return record.receipt ?? '';
      return record?.kind === 'debit' ? say.money(record.cents, currency) : '';
    },
  };
}

/**
 * The balances of a book with names in place of ids, as two books of one season have different ids
 * for the same things; stalls by place and start.
 */
export function balancesByName(ledger: Ledger): Record<string, number> {
  const { setup } = ledger;
  const account = (text: string): string => {
    const [kind = '', ...rest] = text.split(':');
    const id = rest.at(-1) ?? '';
    if (kind === 'seller' || kind === 'owed') return `${kind}:${sellerName(setup, id)}`;
    if (kind === 'neighbour') return `${kind}:${setup.neighbours.get(id)?.name}`;
    const stall = setup.stalls.get(id);
    if (kind !== 'pool' || stall === undefined) return text;
    return `pool:${setup.hosts.get(stall.host)?.name} ${stall.starts}`;
  };
  const { stock, money, credit } = ledger.balances.toAccounts();
  const flat: [string, number][] = Object.entries(money).map(([to, minor]) => [
    `money ${account(to)}`,
    minor,
  ]);
  for (const [table, byProduct] of Object.entries({ stock, credit })) {
    for (const [product, accounts] of Object.entries(byProduct)) {
      for (const [to, units] of Object.entries(accounts)) {
        flat.push([`${table} ${account(to)} ${productName(setup, product)}`, units]);
      }
    }
  }
  return Object.fromEntries(flat.sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** How many movements of each kind count. */
export function movementsByKind(ledger: Ledger): Record<string, number> {
  const counted: Record<string, number> = {};
  for (const record of ledger.standing.records()) {
    if (!isMovement(record) || !ledger.standing.counts(record)) continue;
    counted[record.kind] = (counted[record.kind] ?? 0) + 1;
  }
  return counted;
}
