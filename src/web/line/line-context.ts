import type { LineContext } from '../../intake/one-line/read-line.ts';
import { hostName } from '../../statements/account-name.ts';
import type { Book } from '../book.ts';
import { caseUnits } from '../parts/typed.ts';

/** What the reader of one line asks of a book, answered by the open one. */
export function lineContext(book: Book): LineContext {
  const { ledger } = book;
  const { setup } = ledger;
  const named = <R extends { readonly name: string }>(
    records: ReadonlyMap<string, R>,
  ): { readonly id: string; readonly name: string }[] =>
    [...records].map(([id, { name }]) => ({ id, name }));
  return {
    names: {
      seller: [...setup.sellers.values()].map(({ seller, name, family }) => ({
        id: seller,
        name,
        also: `${family} ${setup.families.get(family)?.name ?? ''}`,
      })),
      product: named(setup.products),
      neighbour: named(setup.neighbours),
      stall: [...setup.stalls.values()].map(({ stall, host, starts }) => ({
        id: stall,
        name: hostName(setup, host),
        day: starts.slice(0, 10),
      })),
    },
    today: book.workingDay(),
    currency: book.currency,
    receipt: book.nextReceipt(),
    caseUnits: (product, day) => caseUnits(ledger, product, day),
    owed: (seller) => ledger.balances.moneyOf(`owed:${seller}`),
  };
}
