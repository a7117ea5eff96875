import { useState } from 'preact/hooks';
import { AmountField } from '../../parts/amount-field.tsx';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import {
  CheckField,
  DayField,
  MomentField,
  type Option,
  SelectField,
  TextField,
} from '../../parts/field.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { type Checked, useSaving } from '../../parts/saving.ts';
import { say } from '../../say.ts';

/** What is typed into a set-up form, by field; a tick is `yes` or empty. */
export type Values = Readonly<Record<string, string>>;

export interface FieldSpec {
  readonly name: string;
  readonly label: string;
  readonly kind: 'text' | 'long' | 'whole' | 'money' | 'day' | 'time' | 'check' | 'select';
  readonly hint?: string;
  readonly optional?: boolean;
  readonly options?: readonly Option[];
  /** Words of the choice of nothing in a select. */
  readonly empty?: string;
}

/**
 * A form from a list of fields: set-up kinds differ in their fields and in what they become.
 * Once the season is closed it only shows what was set up.
 */
export function FieldsForm(props: {
  readonly title: string;
  readonly fields: readonly FieldSpec[];
  readonly start: Values;
  /** Turns what was typed into records, or says what does not fit. */
  readonly read: (values: Values) => Checked;
  readonly submit: string;
  readonly onDone: () => void;
  readonly onCancel?: () => void;
}) {
  const [values, setValues] = useState(props.start);
  const saving = useSaving();
  const readOnly = useClosed() !== undefined;
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    void saving.save(props.read(values), props.onDone);
  };
  return (
    <form class="panel" onSubmit={save} noValidate aria-label={props.title}>
      <h2>{props.title}</h2>
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <fieldset disabled={readOnly} aria-label={props.title}>
        {props.fields.map((field) => (
          <OneField
            key={field.name}
            field={field}
            value={values[field.name] ?? ''}
            error={saving.errorOf(field.name)}
            onValue={(value) => setValues({ ...values, [field.name]: value })}
          />
        ))}
      </fieldset>
      {!readOnly && (
        <div class="form-end">
          <Button kind="main" submit disabled={saving.busy}>
            {props.submit}
          </Button>
          {props.onCancel && (
            <Button quiet onClick={props.onCancel}>
              {say`Close without saving`}
            </Button>
          )}
        </div>
      )}
    </form>
  );
}

function OneField(props: {
  readonly field: FieldSpec;
  readonly value: string;
  readonly error: string | undefined;
  readonly onValue: (value: string) => void;
}) {
  const { kind, options, empty, ...rest } = props.field;
  const { value, onValue, error } = props;
  const common = { ...rest, value, onValue, error };
  switch (kind) {
    case 'check':
      return (
        <CheckField
          label={rest.label}
          {...(rest.hint === undefined ? {} : { hint: rest.hint })}
          checked={value === 'yes'}
          onChecked={(checked) => onValue(checked ? 'yes' : '')}
        />
      );
    case 'money':
      return <AmountField {...common} />;
    case 'day':
      return <DayField {...common} />;
    case 'time':
      return <MomentField {...common} />;
    case 'select':
      return (
        <SelectField
          {...common}
          options={options ?? []}
          {...(empty === undefined ? {} : { empty })}
        />
      );
    case 'whole':
      return <TextField {...common} inputMode="numeric" />;
    default:
      return (
        <TextField {...common} long={kind === 'long'} maxLength={kind === 'long' ? 500 : 200} />
      );
  }
}
