import { useState } from 'preact/hooks';
import { done } from '../../../base/outcome.ts';
import type { Draft } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { type Checked, useSaving } from '../../parts/saving.ts';
import { type Column, Table } from '../../parts/table.tsx';
import { useFocusBack } from '../../parts/use-focus-back.ts';
import { say } from '../../say.ts';
import { type FieldSpec, FieldsForm, type Values } from './fields-form.tsx';

/** What a list of set-up things needs to be shown, added to and edited. */
export interface ListSpec<R> {
  readonly caption: string;
  /** What adding one is called: "Add a host shop", and on the form's button. */
  readonly add: readonly [open: string, save: string];
  readonly rows: readonly R[];
  readonly columns: readonly Column<R>[];
  readonly keyOf: (row: R) => string;
  readonly nameOf: (row: R) => string;
  readonly fields: readonly FieldSpec[];
  readonly start: (row: R | undefined) => Values;
  readonly read: (values: Values, row: R | undefined) => Checked;
  /** Records that take a row away; without it, or where there are none, the row stays. */
  readonly remove?: (row: R) => readonly Draft[];
  readonly none: string;
}

/** A table with Edit in each row and one form for adding and editing; read-only once closed. */
export function EditableList<R>({ spec }: { readonly spec: ListSpec<R> }) {
  const [open, setOpen] = useState<{ readonly row: R | undefined } | undefined>(undefined);
  const closed = useClosed() !== undefined;
  const [addWords, addIt] = spec.add;
  const within = useFocusBack(
    open && (open.row === undefined ? addWords : say`Edit ${spec.nameOf(open.row)}`),
  );
  const removing = useSaving();
  const edit: Column<R> = {
    head: say`Change`,
    verbs: true,
    cell: (row) => (
      <span class="row-verbs">
        <Button quiet label={say`Edit ${spec.nameOf(row)}`} onClick={() => setOpen({ row })}>
          {say`Edit`}
        </Button>
        <RemoveButton spec={spec} row={row} onRemove={(drafts) => removing.save(done(drafts))} />
      </span>
    ),
  };
  return (
    <div ref={within}>
      <ErrorSummary errors={removing.errors} attempt={removing.attempt} />
      {open !== undefined && !closed && (
        <FieldsForm
          key={open.row === undefined ? 'new' : spec.keyOf(open.row)}
          title={open.row === undefined ? addWords : say`Edit ${spec.nameOf(open.row)}`}
          fields={spec.fields}
          start={spec.start(open.row)}
          read={(values) => spec.read(values, open.row)}
          submit={open.row === undefined ? addIt : say`Save the changes`}
          onDone={() => setOpen(undefined)}
          onCancel={() => setOpen(undefined)}
        />
      )}
      {open === undefined && !closed && (
        <p class="button-row">
          <Button onClick={() => setOpen({ row: undefined })}>{addWords}</Button>
        </p>
      )}
      <div class="stack stack-list">
        <Table
          caption={spec.caption}
          rows={spec.rows}
          keyOf={spec.keyOf}
          columns={closed ? spec.columns : [...spec.columns, edit]}
          none={spec.none}
        />
      </div>
    </div>
  );
}

/** Only where the row can be taken away: a thing with records behind it stays. */
function RemoveButton<R>(props: {
  readonly spec: ListSpec<R>;
  readonly row: R;
  readonly onRemove: (drafts: readonly Draft[]) => unknown;
}) {
  const drafts = props.spec.remove?.(props.row) ?? [];
  if (drafts.length === 0) return null;
  return (
    <Button
      quiet
      label={say`Remove ${props.spec.nameOf(props.row)}`}
      onClick={() => props.onRemove(drafts)}
    >
      {say`Remove`}
    </Button>
  );
}
