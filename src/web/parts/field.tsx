import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { say } from '../say.ts';

/**
 * A form field: label, hint, error and one control, tied together for screen readers.
 * `Field` takes any control; `TextField`, `DayField`, `SelectField`, `CheckField` are the usual
 * ones.
 *
 *   <TextField label="Name" value={name} onValue={setName} error={errors.name} />
 *
 * `name` is where errors point to: an ErrorSummary links to the control with that id.
 */
export interface FieldProps {
  readonly label: string;
  /** Unique on the page; the control's id, and the field's path in findings (`lines.honey`). */
  readonly name?: string;
  readonly hint?: ComponentChildren;
  readonly error?: string | undefined;
  readonly optional?: boolean;
}

export interface ControlProps {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': 'true' | undefined;
}

export function Field(
  props: FieldProps & { readonly control: (control: ControlProps) => ComponentChildren },
) {
  const made = useId();
  const id = props.name === undefined ? made : fieldId(props.name);
  const described = [props.hint && `${id}-hint`, props.error && `${id}-error`].filter(Boolean);
  return (
    <div class={props.error ? 'field field-wrong' : 'field'}>
      <label for={id}>
        {props.label}
        {props.optional && <span class="field-optional"> {say`(if any)`}</span>}
      </label>
      {props.hint && (
        <div class="field-hint" id={`${id}-hint`}>
          {props.hint}
        </div>
      )}
      {props.error && (
        <p class="error-text" id={`${id}-error`}>
          {props.error}
        </p>
      )}
      {props.control({
        id,
        'aria-describedby': described.length > 0 ? described.join(' ') : undefined,
        'aria-invalid': props.error ? 'true' : undefined,
      })}
    </div>
  );
}

/** The id of the control of a named field, which an error summary links to. */
export function fieldId(name: string): string {
  return `field-${name.replace(/[^\w-]/g, '-')}`;
}

interface TextValue {
  readonly value: string;
  readonly onValue: (value: string) => void;
}

export function TextField(
  props: FieldProps &
    TextValue & {
      readonly long?: boolean;
      readonly inputMode?: 'text' | 'numeric' | 'decimal' | 'email';
      readonly maxLength?: number;
      readonly autocomplete?: string;
    },
) {
  const { value, onValue } = props;
  return (
    <Field
      {...props}
      control={(control) =>
        props.long ? (
          <textarea
            {...control}
            rows={4}
            maxLength={props.maxLength}
            value={value}
            onInput={(event) => onValue(event.currentTarget.value)}
          />
        ) : (
          <input
            {...control}
            type="text"
            inputMode={props.inputMode ?? 'text'}
            autocomplete={props.autocomplete ?? 'off'}
            maxLength={props.maxLength}
            value={value}
            onInput={(event) => onValue(event.currentTarget.value)}
          />
        )
      }
    />
  );
}

/** A calendar day, `YYYY-MM-DD`. */
export function DayField(props: FieldProps & TextValue) {
  return (
    <Field
      {...props}
      control={(control) => (
        <input
          {...control}
          type="date"
          class="narrow"
          value={props.value}
          onInput={(event) => props.onValue(event.currentTarget.value)}
        />
      )}
    />
  );
}

/** A local day and time, `YYYY-MM-DDTHH:MM`. */
export function MomentField(props: FieldProps & TextValue) {
  return (
    <Field
      {...props}
      control={(control) => (
        <input
          {...control}
          type="datetime-local"
          class="moment"
          value={props.value}
          onInput={(event) => props.onValue(event.currentTarget.value)}
        />
      )}
    />
  );
}

export interface Option {
  readonly value: string;
  readonly words: string;
  /** Options of one group stand under its heading. */
  readonly group?: string;
}

/** A native select; `empty` is the words of the choice of nothing. */
export function SelectField(
  props: FieldProps & TextValue & { readonly options: readonly Option[]; readonly empty?: string },
) {
  const groups = Map.groupBy(props.options, (option) => option.group ?? '');
  return (
    <Field
      {...props}
      control={(control) => (
        <select
          {...control}
          value={props.value}
          onChange={(event) => props.onValue(event.currentTarget.value)}
        >
          {props.empty !== undefined && <option value="">{props.empty}</option>}
          {[...groups].map(([group, options]) =>
            group === '' ? (
              <Options options={options} chosen={props.value} />
            ) : (
              <optgroup key={group} label={group}>
                <Options options={options} chosen={props.value} />
              </optgroup>
            ),
          )}
        </select>
      )}
    />
  );
}

function Options(props: { readonly options: readonly Option[]; readonly chosen: string }) {
  return (
    <>
      {props.options.map((option) => (
        <option key={option.value} value={option.value} selected={option.value === props.chosen}>
          {option.words}
        </option>
      ))}
    </>
  );
}

/** One of a few, all in sight: a row of radio buttons that look like chips. */
export function ChoiceField(
  props: FieldProps & TextValue & { readonly options: readonly Option[] },
) {
  const made = useId();
  const id = props.name === undefined ? made : fieldId(props.name);
  return (
    <fieldset class={props.error ? 'field field-wrong' : 'field'} aria-describedby={`${id}-about`}>
      <legend>{props.label}</legend>
      <div id={`${id}-about`}>
        {props.hint && <div class="field-hint">{props.hint}</div>}
        {props.error && <p class="error-text">{props.error}</p>}
      </div>
      <div class="chips">
        {props.options.map((option, place) => (
          <label key={option.value} class="chip">
            <input
              type="radio"
              id={place === 0 ? id : undefined}
              name={id}
              value={option.value}
              checked={props.value === option.value}
              onChange={() => props.onValue(option.value)}
            />
            <span>{option.words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

export function CheckField(props: {
  readonly label: string;
  readonly checked: boolean;
  readonly onChecked: (checked: boolean) => void;
  readonly hint?: string;
}) {
  const id = useId();
  return (
    <div class="field check-field">
      <input
        type="checkbox"
        id={id}
        checked={props.checked}
        aria-describedby={props.hint ? `${id}-hint` : undefined}
        onChange={(event) => props.onChecked(event.currentTarget.checked)}
      />
      <label for={id}>{props.label}</label>
      {props.hint && (
        <div class="field-hint" id={`${id}-hint`}>
          {props.hint}
        </div>
      )}
    </div>
  );
}
