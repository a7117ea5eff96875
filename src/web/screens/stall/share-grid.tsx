import type { ShareCheck } from '../../../questions/share-check.ts';
import { productName, sellerName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { fieldId } from '../../parts/field.tsx';
import { Units } from '../../parts/figures.tsx';

/** Units as typed, by seller and product. */
export type ShareTyped = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** Sellers down, products across; under each product what is not yet shared. */
export function ShareGrid(props: {
  readonly sellers: readonly string[];
  readonly check: ShareCheck;
  readonly typed: ShareTyped;
  readonly onTyped: (typed: ShareTyped) => void;
  readonly errorOf: (field: string) => string | undefined;
}) {
  const { setup } = useBook().ledger;
  const { check, sellers } = props;
  return (
    <div class="table-scroll">
      <table class="table share-grid">
        <caption class="only-read">Units by seller and product</caption>
        <thead>
          <tr>
            <th scope="col">Seller</th>
            {check.products.map(({ product }) => (
              <th scope="col" class="number" key={product}>
                {productName(setup, product)}
              </th>
            ))}
            <th scope="col" class="number">
              Together
            </th>
          </tr>
        </thead>
        <tbody>
          {sellers.map((seller) => (
            <tr key={seller}>
              <th scope="row">{sellerName(setup, seller)}</th>
              {check.products.map(({ product }) => (
                <td class="number" key={product}>
                  <Cell seller={seller} product={product} {...props} />
                </td>
              ))}
              <td class="number">
                <Units units={check.totals[seller] ?? 0} plain />
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">In the pool</th>
            {check.products.map(({ product, pool }) => (
              <td class="number" key={product}>
                {pool}
              </td>
            ))}
            <td />
          </tr>
          <tr aria-live="polite">
            <th scope="row">Not yet shared</th>
            {check.products.map(({ product, left }) => (
              <td class="number" key={product} id={fieldId(`share.${product}`)}>
                {left >= 0 ? left : <b class="figure-difference">{-left} too much</b>}
              </td>
            ))}
            <td class="number">
              <Units units={check.left} plain />
            </td>
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

function Cell(props: {
  readonly seller: string;
  readonly product: string;
  readonly typed: ShareTyped;
  readonly onTyped: (typed: ShareTyped) => void;
  readonly errorOf: (field: string) => string | undefined;
}) {
  const { setup } = useBook().ledger;
  const { seller, product, typed } = props;
  const field = `share.${product}.${seller}`;
  return (
    <input
      id={fieldId(field)}
      type="text"
      inputMode="numeric"
      autocomplete="off"
      class="number"
      aria-label={`${sellerName(setup, seller)}, ${productName(setup, product)}`}
      aria-invalid={props.errorOf(field) ? 'true' : undefined}
      value={typed[seller]?.[product] ?? ''}
      onInput={(event) =>
        props.onTyped({
          ...typed,
          [seller]: { ...typed[seller], [product]: event.currentTarget.value },
        })
      }
    />
  );
}
