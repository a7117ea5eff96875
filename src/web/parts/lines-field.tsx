import { useState } from 'preact/hooks';
import { plainText } from '../../base/plain-text.ts';
import { valueOfLines } from '../../questions/value-of-lines.ts';
import type { Lines } from '../../records/fields.ts';
import { useBook } from '../book.ts';
import { say } from '../say.ts';
import { fieldId } from './field.tsx';
import { Money, Units } from './figures.tsx';
import { link } from './link.tsx';
import { caseUnits, type LinesTyped } from './typed.ts';

/** More products than a person finds at a glance: a search stands above them. */
const MANY_PRODUCTS = 15;

/**
 * Goods by product: cases and singles side by side, price shown, with the running total in units
 * and money. `value` is what was typed; `typedLines` (typed.ts) makes whole units of it.
 *
 *   <LinesField label="Goods" name="lines" value={typed} onValue={setTyped} day={day}
 *     units={lines} errors={new Map([['honey', 'Write whole numbers.']])} />
 */
export function LinesField(props: {
  readonly label: string;
  readonly name: string;
  readonly value: LinesTyped;
  readonly onValue: (value: LinesTyped) => void;
  /** Prices and case sizes of this day are used. */
  readonly day: string;
  /** The whole units that `value` stands for so far. */
  readonly units: Lines;
  readonly error?: string | undefined;
  readonly errors?: ReadonlyMap<string, string>;
  readonly hint?: string;
  /** Only these products; without it, all that are not retired or already have a line. */
  readonly products?: readonly string[];
  /** A figure to show beside each product, like what the seller holds now. */
  readonly beside?: { readonly head: string; readonly units: Lines };
}) {
  const { ledger } = useBook();
  const { products } = ledger.setup;
  const shown = [...products.values()].filter(
    ({ product, retired }) =>
      props.products?.includes(product) ?? (!retired || product in props.value),
  );
  const total = valueOfLines(ledger, props.units, props.day);
  const id = fieldId(props.name);
  const [wanted, setWanted] = useState('');
  if (shown.length === 0) return <NoProducts />;
  const isMany = shown.length > MANY_PRODUCTS;
  // What is filled in stays in sight, so that a search never hides what will be saved.
  const found = shown.filter(
    ({ product, name }) =>
      (props.units[product] ?? 0) > 0 || plainText(name).includes(plainText(wanted)),
  );
  return (
    <fieldset class={props.error ? 'field lines field-wrong' : 'field lines'}>
      <legend>{props.label}</legend>
      {props.hint && <p class="field-hint">{props.hint}</p>}
      {props.error && <p class="error-text">{props.error}</p>}
      {isMany && (
        <input
          type="search"
          class="lines-find"
          placeholder={say`Find one of ${shown.length} products`}
          aria-label={say`${props.label}: find a product`}
          value={wanted}
          onInput={(event) => setWanted(event.currentTarget.value)}
        />
      )}
      <div class="scrolls">
        <table class="lines-table">
          <thead>
            <tr>
              <th scope="col">{say`Product`}</th>
              {props.beside && (
                <th scope="col" class="number lines-beside">
                  {props.beside.head}
                </th>
              )}
              <th scope="col" class="number">
                {say`Cases`}
              </th>
              <th scope="col" class="number">
                {say`Singles`}
              </th>
              <th scope="col" class="number lines-sum">
                {say`Units`}
              </th>
            </tr>
          </thead>
          <tbody>
            {found.map(({ product, name }, place) => (
              <LineRow
                key={product}
                id={place === 0 ? id : fieldId(`${props.name}.${product}`)}
                product={product}
                words={name}
                {...props}
              />
            ))}
          </tbody>
        </table>
      </div>
      <p class="lines-total" aria-live="polite">
        <Units units={total.units} /> <Money minor={total.minor} />
      </p>
    </fieldset>
  );
}

/** Said where goods would be asked for, with the way to the first product. */
export function NoProducts() {
  return (
    <p class="none">
      {say.pieces`No product yet. ${link('/products', say`Add the first one`)} from the supplier’s
        price list.`}
    </p>
  );
}

function LineRow(props: {
  readonly id: string;
  readonly product: string;
  readonly words: string;
  readonly value: LinesTyped;
  readonly onValue: (value: LinesTyped) => void;
  readonly day: string;
  readonly units: Lines;
  readonly errors?: ReadonlyMap<string, string>;
  readonly beside?: { readonly head: string; readonly units: Lines };
}) {
  const { ledger } = useBook();
  const { product, words } = props;
  const typed = props.value[product] ?? { cases: '', singles: '' };
  const size = caseUnits(ledger, product, props.day);
  const type = (part: 'cases' | 'singles', text: string) =>
    props.onValue({ ...props.value, [product]: { ...typed, [part]: text } });
  const error = props.errors?.get(product);
  const units = props.units[product] ?? 0;
  return (
    <tr class={units > 0 ? 'lines-filled' : ''}>
      <th scope="row">
        <span class="lines-name">{words}</span>{' '}
        <span class="lines-price">
          <Money minor={ledger.priceOn(product, props.day)} plain />
          {size > 1 && `, ${say`case of ${size}`}`}
        </span>
        {error && (
          <span class="error-text" id={`${props.id}-error`}>
            {error}
          </span>
        )}
      </th>
      {props.beside && <td class="number lines-beside">{props.beside.units[product] ?? 0}</td>}
      <td class="number">
        {size > 1 && (
          <input
            type="text"
            inputMode="numeric"
            autocomplete="off"
            class="number lines-input"
            aria-label={say`${words}, cases of ${size}`}
            value={typed.cases}
            onInput={(event) => type('cases', event.currentTarget.value)}
          />
        )}
      </td>
      <td class="number">
        <input
          id={props.id}
          type="text"
          inputMode="numeric"
          autocomplete="off"
          class="number lines-input"
          aria-label={say`${words}, singles`}
          aria-invalid={error ? 'true' : undefined}
          aria-describedby={error ? `${props.id}-error` : undefined}
          value={typed.singles}
          onInput={(event) => type('singles', event.currentTarget.value)}
        />
      </td>
      <td class="number lines-sum">{units > 0 ? units : ''}</td>
    </tr>
  );
}
