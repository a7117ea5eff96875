import { denominations } from '../../../questions/denominations.ts';
import { useBook } from '../../book.ts';
import { AmountField } from '../../parts/amount-field.tsx';
import {
  CheckField,
  ChoiceField,
  DayField,
  MomentField,
  SelectField,
  TextField,
} from '../../parts/field.tsx';
import { LinesField } from '../../parts/lines-field.tsx';
import type { FieldError } from '../../parts/notice.tsx';
import { SellerPicker } from '../../parts/pickers.tsx';
import { typedLines } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import type { FieldForm, FieldOf } from './field-form.ts';
import { flatLines, linesTyped, type Typed } from './form-values.ts';
import { LikelyChips } from './likely-chips.tsx';
import { offersFor, optionsFor } from './offers.ts';
import { ReceiptsField } from './receipts-field.tsx';
import { RowsField } from './rows-field.tsx';
import { SharesField } from './shares-field.tsx';
import { UsualWords } from './usual-words.tsx';

/** Draws one field of a form by its row of the table, and hands back what is typed. */
export interface FormFieldProps {
  readonly form: FieldForm;
  readonly typed: Typed;
  readonly onType: (typed: Typed) => void;
  readonly errors: readonly FieldError[];
}

export function FormField(props: FormFieldProps) {
  const { form, typed, onType, errors } = props;
  const { ledger } = useBook();
  const common = {
    name: form.field,
    label: form.label,
    value: typed[form.field] ?? '',
    onValue: (value: string) => onType({ ...typed, [form.field]: value }),
    error: errors.find((error) => error.field === form.field)?.words,
    ...(form.hint === undefined ? {} : { hint: form.hint }),
    ...(form.optional ? { optional: true } : {}),
  };
  switch (form.type) {
    case 'seller':
      return (
        <>
          <SellerPicker {...common} {...(form.optional ? { none: say`Nobody` } : {})} />
          {form.likely !== undefined && (
            <LikelyChips likely={form.likely} chosen={common.value} onSeller={common.onValue} />
          )}
        </>
      );
    case 'thing':
    case 'record':
    case 'pool':
      return (
        <SelectField
          {...common}
          options={optionsFor(form, ledger, common.value)}
          empty={say`Choose`}
        />
      );
    case 'choice':
      return (
        <ChoiceField
          {...common}
          options={form.options.map(([value, words]) => ({ value, words }))}
        />
      );
    case 'money':
      return <AmountField {...common} chips={offersFor(form, typed, ledger)} />;
    case 'whole':
      return <TextField {...common} inputMode="numeric" />;
    case 'text':
      return (
        <>
          <TextField {...common} />
          {form.usual !== undefined && <UsualWords {...common} usual={form.usual} />}
        </>
      );
    case 'texts':
      return <TextField {...common} long optional />;
    case 'day':
      return <DayField {...common} />;
    case 'moment':
      return <MomentField {...common} />;
    case 'check':
      return (
        <CheckField
          {...common}
          checked={common.value === 'yes'}
          onChecked={(checked) => common.onValue(checked ? 'yes' : '')}
        />
      );
    case 'lines':
      return <GoodsField {...props} form={form} />;
    case 'counters':
      return <CountersField {...props} />;
    case 'tally':
      return <TallyField {...props} />;
    case 'receipts':
      return <ReceiptsField {...props} />;
    case 'shares':
      return <SharesField {...props} />;
    case 'rows':
      return <RowsField {...props} form={form} />;
  }
}

function GoodsField(props: FormFieldProps & { readonly form: FieldOf<'lines'> }) {
  const { form, typed, onType, errors } = props;
  const { ledger } = useBook();
  const value = linesTyped(form.field, typed);
  const day = typed.date ?? '';
  const read = typedLines(value, ledger, day, true);
  const own = errors.filter((error) => error.field.startsWith(`${form.field}.`));
  const products = own.map((error): [string, string] => [
    error.field.slice(form.field.length + 1),
    error.words,
  ]);
  const field = (
    <LinesField
      label={form.label}
      name={form.field}
      value={value}
      onValue={(lines) => onType({ ...typed, ...flatLines(form.field, lines) })}
      day={day}
      units={read.ok ? read.value : {}}
      error={errors.find((error) => error.field === form.field)?.words}
      errors={new Map(products)}
      {...(form.hint === undefined ? {} : { hint: form.hint })}
      {...besideOf(form, typed, ledger)}
    />
  );
  if (!form.optional || Object.keys(value).length > 0 || form.always) return field;
  // Goods that are seldom asked for stay folded until they are wanted.
  return (
    <details class="folded">
      <summary>{say`${form.label} (if any)`}</summary>
      {field}
    </details>
  );
}

function besideOf(
  form: FieldOf<'lines'>,
  typed: Typed,
  ledger: ReturnType<typeof useBook>['ledger'],
) {
  if (form.beside === undefined) return {};
  const account = form.beside === 'stockroom' ? 'stockroom' : `seller:${typed.seller ?? ''}`;
  const head = form.beside === 'stockroom' ? say`In stock` : say`Has`;
  return { beside: { head, units: ledger.balances.linesOf('stock', account) } };
}

function CountersField({ form, typed, onType, errors }: FormFieldProps) {
  return (
    <div class="side-by-side">
      {[0, 1].map((place) => (
        <TextField
          key={place}
          label={place === 0 ? say`${form.label}, first person` : say`Second person`}
          name={place === 0 ? form.field : `${form.field}.${place}`}
          optional
          error={
            place === 0 ? errors.find((error) => error.field === form.field)?.words : undefined
          }
          value={typed[`${form.field}.${place}`] ?? ''}
          onValue={(value) => onType({ ...typed, [`${form.field}.${place}`]: value })}
        />
      ))}
    </div>
  );
}

/** Pieces of each note and coin of the season's currency. */
function TallyField({ form, typed, onType, errors }: FormFieldProps) {
  const { currency } = useBook();
  const values = denominations(currency);
  if (values.length === 0) return null;
  const counted = Object.keys(typed).some((key) => key.startsWith(`${form.field}.`));
  return (
    <details class="folded" open={counted}>
      <summary>{say`${form.label} (if counted so)`}</summary>
      <div class="tally">
        {values.map((minor) => (
          <label key={minor}>
            <span>{say.money(minor, currency)}</span>
            <input
              type="text"
              inputMode="numeric"
              autocomplete="off"
              class="number"
              value={typed[`${form.field}.${minor}`] ?? ''}
              onInput={(event) =>
                onType({ ...typed, [`${form.field}.${minor}`]: event.currentTarget.value })
              }
            />
          </label>
        ))}
      </div>
      {errors
        .filter((error) => error.field === form.field)
        .map((error) => (
          <p class="error-text" key={error.words}>
            {error.words}
          </p>
        ))}
    </details>
  );
}
