import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { fieldId } from '../../parts/field.tsx';
import { say } from '../../say.ts';
import type { FormFieldProps } from './form-fields.tsx';

/** Units of a pool to each seller: sellers down, products across, with what is not yet shared. */
export function SharesField({ form, typed, onType, errors }: FormFieldProps) {
  const { ledger } = useBook();
  const open = ledger.balances.linesOf('credit', `pool:${typed.pool ?? ''}`);
  const named = Object.keys(typed)
    .filter((key) => key.startsWith(`${form.field}.`))
    .map((key) => key.split('.')[2] ?? '');
  const products = [...new Set([...Object.keys(open), ...named])].filter(Boolean).sort();
  const error = errors.find((wrong) => wrong.field === form.field)?.words;
  if (products.length === 0) return <p class="none">{say`Choose a pool that has units in it.`}</p>;
  return (
    <fieldset class="field shares" id={fieldId(form.field)} tabIndex={-1}>
      <legend>{form.label}</legend>
      {error && <p class="error-text">{error}</p>}
      <section class="scrolls" aria-label={form.label}>
        <table class="lines-table">
          <thead>
            <tr>
              <th scope="col">{say`Seller`}</th>
              {products.map((product) => (
                <th scope="col" class="number" key={product}>
                  {productName(ledger.setup, product)}
                  <br />
                  {say.count(open[product] ?? 0)`# not yet shared|# not yet shared`}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {[...ledger.setup.sellers.values()].map(({ seller, name }) => (
              <tr key={seller}>
                <th scope="row">{name}</th>
                {products.map((product) => {
                  const key = `${form.field}.${seller}.${product}`;
                  return (
                    <td class="number" key={product}>
                      <input
                        type="text"
                        inputMode="numeric"
                        autocomplete="off"
                        class="number lines-input"
                        aria-label={`${name}, ${productName(ledger.setup, product)}`}
                        value={typed[key] ?? ''}
                        onInput={(event) => onType({ ...typed, [key]: event.currentTarget.value })}
                      />
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </fieldset>
  );
}
