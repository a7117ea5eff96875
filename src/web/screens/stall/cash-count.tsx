import { denominations, tallied } from '../../../questions/denominations.ts';
import { useBook } from '../../book.ts';
import { AmountField } from '../../parts/amount-field.tsx';
import { fieldId } from '../../parts/field.tsx';
import { Money } from '../../parts/figures.tsx';
import { typedWhole } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import type { SettleForm } from './settle-form.ts';
import { tallies } from './stall-typed.ts';

/** Notes and coins by piece; the sum is worked out, never typed. */
export function CashCount(props: SettleForm & { readonly cash: number; readonly legend?: string }) {
  const { currency } = useBook();
  if (!tallies(props.typed, currency)) return <CashSum {...props} />;
  return (
    <fieldset class="field cash-count">
      <legend>{props.legend ?? say`Cash in the box, float included`}</legend>
      <table class="cash-tally">
        <thead>
          <tr>
            <th scope="col">{say`Note or coin`}</th>
            <th scope="col" class="number">
              {say`Pieces`}
            </th>
            <th scope="col" class="number">
              {say`Sum`}
            </th>
          </tr>
        </thead>
        <tbody>
          {denominations(currency).map((value) => (
            <TallyRow key={value} value={value} {...props} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={2}>
              {say`Counted cash`}
            </th>
            <td class="number">
              <Money minor={props.cash} />
            </td>
          </tr>
        </tfoot>
      </table>
    </fieldset>
  );
}

function TallyRow(props: SettleForm & { readonly value: number }) {
  const { currency } = useBook();
  const { typed, value } = props;
  const text = typed.tally[value] ?? '';
  const count = typedWhole(text);
  const name = say.money(value, currency);
  const error = props.errorOf(`tally.${value}`);
  return (
    <tr>
      <th scope="row" class="number">
        {name}
      </th>
      <td class="number">
        <input
          id={fieldId(`tally.${value}`)}
          type="text"
          inputMode="numeric"
          autocomplete="off"
          class="number"
          aria-label={say`Pieces of ${name}`}
          aria-invalid={error ? 'true' : undefined}
          value={text}
          onInput={(event) =>
            props.onTyped({
              ...typed,
              tally: { ...typed.tally, [value]: event.currentTarget.value },
            })
          }
        />
      </td>
      <td class="number">
        {count.ok && count.value > 0 && <Money minor={tallied({ [value]: count.value })} plain />}
        {error && <span class="error-text">{error}</span>}
      </td>
    </tr>
  );
}

/** A currency whose notes and coins are not known is counted as one sum. */
function CashSum(props: SettleForm & { readonly legend?: string }) {
  return (
    <AmountField
      label={props.legend ?? say`Cash in the box, float included`}
      name="cash"
      value={props.typed.cash}
      onValue={(cash) => props.onTyped({ ...props.typed, cash })}
      error={props.errorOf('cash')}
    />
  );
}
