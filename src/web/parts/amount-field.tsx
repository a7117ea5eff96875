import { currencySign } from '../../base/currency.ts';
import { useBook } from '../book.ts';
import { say } from '../say.ts';
import { Field, type FieldProps } from './field.tsx';
import { moneyToType } from './typed.ts';

/**
 * Money as typed text; the screen turns it into minor units with `typedMoney` on saving, so that
 * what was typed is kept when it does not fit. `chips` are amounts (minor units) offered to tap.
 *
 *   <AmountField label="Amount" name="cents" value={text} onValue={setText}
 *     chips={[{ minor: 16000, words: 'all that is due' }]} />
 */
export function AmountField(
  props: FieldProps & {
    readonly value: string;
    readonly onValue: (value: string) => void;
    readonly chips?: readonly { readonly minor: number; readonly words: string }[];
  },
) {
  const { currency } = useBook();
  return (
    <Field
      {...props}
      control={(control) => (
        <div class="amount">
          <span class="amount-sign" aria-hidden="true">
            {currencySign(currency) ?? currency}
          </span>
          <input
            {...control}
            type="text"
            inputMode="decimal"
            autocomplete="off"
            class="number"
            value={props.value}
            onInput={(event) => props.onValue(event.currentTarget.value)}
          />
          {(props.chips ?? []).map((chip) => (
            <button
              type="button"
              class="chip-button"
              key={`${chip.minor} ${chip.words}`}
              onClick={() => props.onValue(moneyToType(chip.minor, currency))}
            >
              <b>{say.money(chip.minor, currency)}</b> {chip.words}
            </button>
          ))}
        </div>
      )}
    />
  );
}
