import type { Mover } from '../../ledger/posting.ts';
import type { MovementRecord } from '../../records/record.ts';
import { about, type BookCheck, type CheckedBook } from './checked-book.ts';

/**
 * Places that cannot hold less than nothing. While facts are still arriving they may: a finding,
 * never a refusal. The finding stands at the last record that took something out.
 */
export const balancesMakeSense: BookCheck = (book, findings) => {
  const below = accountsBelowZero(book);
  if (below.size === 0) return;
  const lastTakings = lastRecordsTaking(book, below);
  for (const [account, amount] of below) {
    const record = lastTakings.get(account);
    if (record === undefined) continue;
    const [field, wanted] = wordsFor(account, record);
    findings.add(about(book, record, 'warning', field, amount, wanted));
  }
};

/** `ledger:account`, or `ledger:account product`, to the balance below zero. */
function accountsBelowZero(book: CheckedBook): Map<string, number> {
  const below = new Map<string, number>();
  const { balances } = book.ledger;
  for (const ledger of ['stock', 'credit'] as const) {
    for (const [account, lines] of balances.table(ledger)) {
      if (!holdsGoods(account)) continue;
      for (const [product, units] of lines) {
        if (units < 0) below.set(`${ledger}:${account} ${product}`, units);
      }
    }
  }
  for (const account of ['cashbox', 'cards']) {
    const minor = balances.moneyOf(account);
    if (minor < 0) below.set(`money:${account}`, minor);
  }
  return below;
}

function holdsGoods(account: string): boolean {
  return account === 'stockroom' || account.startsWith('seller:') || account.startsWith('pool:');
}

function lastRecordsTaking(
  book: CheckedBook,
  below: ReadonlyMap<string, number>,
): Map<string, MovementRecord> {
  const last = new Map<string, MovementRecord>();
  let current: MovementRecord | undefined;
  const note = (key: string) => {
    if (current !== undefined && below.has(key)) last.set(key, current);
  };
  const watcher: Mover = {
    stock: (product, units, from, to) => note(`stock:${units < 0 ? to : from} ${product}`),
    money: (minor, from, to) => note(`money:${minor < 0 ? to : from}`),
    credit: (product, units, from, to) => note(`credit:${units < 0 ? to : from} ${product}`),
  };
  for (const movement of book.ledger.movements()) {
    current = movement;
    book.ledger.postingsTo(movement, watcher);
  }
  return last;
}

function wordsFor(account: string, record: MovementRecord): [field: string, wanted: string] {
  if (account.startsWith('money:')) {
    const place = account === 'money:cashbox' ? 'the cash box' : 'the card takings';
    return ['cents', `no more out of ${place} than was in it`];
  }
  const [place = '', product = ''] = account.slice(account.indexOf(':') + 1).split(' ');
  if (record.kind === 'shareout' && place.startsWith('pool:')) {
    return ['lines', `no more ${product} shared out than the pool ${place.slice(5)} holds`];
  }
  const field = record.kind === 'stall-close' ? `out.${product}` : `lines.${product}`;
  return [field, `no more ${product} out of ${place} than it holds`];
}
