import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { fieldId } from '../../parts/field.tsx';
import { say } from '../../say.ts';
import type { FieldOf, RowColumn } from './field-form.ts';
import type { FormFieldProps } from './form-fields.tsx';
import { rowCount, withoutRow } from './row-values.ts';

/** Rows of small fields, like shifts; rows can be added and taken out. */
export function RowsField(props: FormFieldProps & { readonly form: FieldOf<'rows'> }) {
  const { form, typed, onType, errors } = props;
  const count = rowCount(form.field, typed);
  const first = form.columns[0]?.field ?? '';
  return (
    <fieldset class="field rows">
      <legend>{form.label}</legend>
      {Array.from({ length: count }, (_, at) => (
        <div class="row" key={at}>
          {form.columns.map((column) => {
            const key = `${form.field}.${at}.${column.field}`;
            return (
              <label key={key} for={fieldId(key)}>
                <span>{column.label}</span>
                <Cell
                  id={fieldId(key)}
                  column={column}
                  value={typed[key] ?? ''}
                  wrong={errors.some((error) => error.field === key)}
                  onValue={(value) => onType({ ...typed, [key]: value })}
                />
              </label>
            );
          })}
          <Button
            quiet
            label={say`Take out row ${at + 1} of ${form.label}`}
            onClick={() => onType(withoutRow(form.field, at, typed))}
          >
            {say`Take out`}
          </Button>
        </div>
      ))}
      <Button onClick={() => onType({ ...typed, [`${form.field}.${count}.${first}`]: '' })}>
        {say`Add a row`}
      </Button>
    </fieldset>
  );
}

function Cell(props: {
  readonly id: string;
  readonly column: RowColumn;
  readonly value: string;
  readonly wrong: boolean;
  readonly onValue: (value: string) => void;
}) {
  const { ledger } = useBook();
  const { column, value, onValue } = props;
  const invalid = props.wrong ? 'true' : undefined;
  if (column.as === 'seller' || column.as === 'product') {
    const things = column.as === 'seller' ? ledger.setup.sellers : ledger.setup.products;
    return (
      <select
        id={props.id}
        aria-invalid={invalid}
        value={value}
        onChange={(event) => onValue(event.currentTarget.value)}
      >
        <option value="">{say`Choose`}</option>
        {[...things].map(([id, { name }]) => (
          <option key={id} value={id} selected={id === value}>
            {name}
          </option>
        ))}
      </select>
    );
  }
  const numeric = column.as === 'whole' || column.as === 'money';
  const common = {
    id: props.id,
    'aria-invalid': invalid,
    value,
    onInput: (event: { currentTarget: HTMLInputElement }) => onValue(event.currentTarget.value),
  } as const;
  if (column.as === 'day') return <input {...common} type="date" />;
  return (
    <input
      {...common}
      type="text"
      inputMode={numeric ? 'decimal' : 'text'}
      placeholder={column.as === 'time' ? say`HH:MM` : ''}
      autocomplete="off"
      class={numeric ? 'number' : ''}
    />
  );
}
