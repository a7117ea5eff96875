import type { StallSettlement } from '../../../questions/stall-settlement.ts';
import type { RecordOf } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { fieldId } from '../../parts/field.tsx';
import { Money, Units } from '../../parts/figures.tsx';
import { StopSale } from '../../parts/stop-sale.tsx';
import { caseUnits } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import type { SettleForm } from './settle-form.ts';
import type { GoodsPart } from './stall-typed.ts';

const PARTS: readonly (readonly [GoodsPart, string])[] = [
  ['out', say`Taken out`],
  ['back', say`Brought back`],
  ['damaged', say`Damaged`],
];

/**
 * Goods of the stall product by product; what is sold follows, with what it should have brought.
 */
export function GoodsGrid(props: SettleForm & { readonly settlement: StallSettlement }) {
  const { ledger } = useBook();
  const { typed, settlement } = props;
  const products = [...ledger.setup.products.values()].filter(
    ({ product, retired }) => !retired || product in typed.out || product in typed.back,
  );
  return (
    <fieldset class="goods-grid">
      <legend class="only-read">{say`Goods of the stall`}</legend>
      <div class="goods-row goods-head" aria-hidden="true">
        <span>{say`Product`}</span>
        {PARTS.map(([part, words]) => (
          <span key={part}>{words}</span>
        ))}
        <span class="number">{say`Sold × price = should have`}</span>
      </div>
      {products.map((product) => (
        <ProductRow
          key={product.product}
          product={product}
          sold={settlement.products.find((one) => one.product === product.product)}
          {...props}
        />
      ))}
      <p class="goods-total">
        <Units units={settlement.sold} words={say.count(settlement.sold)`# sold|# sold`} />{' '}
        <Money minor={settlement.should} />
      </p>
    </fieldset>
  );
}

function ProductRow(
  props: SettleForm & {
    readonly product: RecordOf<'product'>;
    readonly sold: StallSettlement['products'][number] | undefined;
  },
) {
  const { ledger } = useBook();
  const { product, sold, typed } = props;
  const price = ledger.priceOn(product.product, typed.date);
  return (
    <div class="goods-row">
      <span class="goods-name">
        {product.name} <StopSale product={product.product} />
      </span>
      {PARTS.map(([part, words]) => (
        <GoodsCell key={part} part={part} words={words} {...props} />
      ))}
      <span class="number goods-sum">
        {sold !== undefined && (
          <>
            {sold.sold} × <Money minor={price} plain /> = <Money minor={sold.value} plain />
          </>
        )}
      </span>
    </div>
  );
}

/** Cases and singles side by side; a broken unit is counted singly. */
function GoodsCell(
  props: SettleForm & {
    readonly product: RecordOf<'product'>;
    readonly part: GoodsPart;
    readonly words: string;
  },
) {
  const { ledger } = useBook();
  const { product, part, words, typed } = props;
  const field = `${part}.${product.product}`;
  const value = typed[part][product.product] ?? { cases: '', singles: '' };
  const size = caseUnits(ledger, product.product, typed.date);
  const error = props.errorOf(field);
  const set = (which: 'cases' | 'singles', text: string) =>
    props.onTyped({
      ...typed,
      [part]: { ...typed[part], [product.product]: { ...value, [which]: text } },
    });
  const input = (which: 'cases' | 'singles', unit: string) => (
    <label class="goods-input">
      <input
        type="text"
        inputMode="numeric"
        autocomplete="off"
        class="number"
        id={which === 'singles' ? fieldId(field) : undefined}
        aria-label={`${product.name}, ${words.toLowerCase()}, ${unit}`}
        aria-invalid={error ? 'true' : undefined}
        value={value[which]}
        onInput={(event) => set(which, event.currentTarget.value)}
      />
      <span aria-hidden="true">{which === 'cases' ? say`cases of ${size}` : say`singles`}</span>
    </label>
  );
  return (
    <span class="goods-cell">
      <span class="goods-part" aria-hidden="true">
        {words}
      </span>
      {size > 1 && part !== 'damaged' && input('cases', say`cases of ${size}`)}
      {input('singles', say`singles`)}
      {error && <span class="error-text">{error}</span>}
    </span>
  );
}
