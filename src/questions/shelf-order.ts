import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { RecordOf } from '../records/record.ts';

/**
 * Products in the order in which a person walks past them: by where they are kept, then by name.
 * Retired products stay in while the book has units of them in the stockroom.
 */
export function shelfOrder(ledger: Ledger): RecordOf<'product'>[] {
  const here = (product: string) => ledger.balances.stockOf('stockroom', product) !== 0;
  const products = [...ledger.setup.products.values()].filter(
    ({ product, retired }) => retired !== true || here(product),
  );
  return products.sort(
    (a, b) => byText(a.storage ?? '', b.storage ?? '') || byText(a.name, b.name),
  );
}
