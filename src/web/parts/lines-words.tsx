import type { Lines } from '../../records/fields.ts';
import { productName } from '../../statements/account-name.ts';
import { useBook } from '../book.ts';
import { say } from '../say.ts';

/** Units by product in one line of words: `5 honey, 2 jam`; `none` where there is nothing. */
export function LinesWords(props: { readonly lines: Lines; readonly none?: string }) {
  const { setup } = useBook().ledger;
  const parts = Object.entries(props.lines).filter(([, units]) => units !== 0);
  if (parts.length === 0) return <span class="none">{props.none ?? say`none`}</span>;
  return (
    <span>
      {parts
        .map(([product, units]) => say.as('goods')`${units} ${productName(setup, product)}`)
        .join(say`, `)}
    </span>
  );
}
