import { type Signal, useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { done } from '../../../base/outcome.ts';
import type { PastedRow, PastedRows, Proposed } from '../../../intake/pasted-rows.ts';
import type { Draft } from '../../book.ts';
import { go } from '../../navigation.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { type FieldProps, TextField } from '../../parts/field.tsx';
import { ErrorSummary, Notice } from '../../parts/notice.tsx';
import { useSaving } from '../../parts/saving.ts';
import { say } from '../../say.ts';
import { PastePreview } from './paste-preview.tsx';

interface PasteBoxProps<Column extends string, Row extends Proposed<Column>>
  extends Pick<FieldProps, 'label' | 'hint' | 'optional'> {
  readonly rows: Signal<readonly PastedRow<Column>[]>;
  readonly read: (pasted: readonly (readonly string[])[]) => PastedRows<Column>;
  /** What the rows would become. */
  readonly proposed: readonly Row[];
  /** Each with its heading. */
  readonly columns: readonly (readonly [Column, string])[];
  /** What a new row becomes, in words. */
  readonly becomes: (row: Row) => ComponentChildren;
  /** What alone is taken over, where columns are not kept. */
  readonly kept: string;
}

/** A list from a spreadsheet: paste it, see what it becomes, fix it in place. Nothing is saved. */
export function PasteBox<Column extends string, Row extends Proposed<Column>>(
  props: PasteBoxProps<Column, Row>,
) {
  const { rows, read } = props;
  const text = useSignal('');
  const notKept = useSignal<readonly string[]>([]);
  const take = async (pasted: string) => {
    text.value = pasted;
    const { textCells } = await import('../../../intake/text-cells.ts');
    const found = read(textCells(pasted));
    rows.value = found.rows;
    notKept.value = found.notKept;
  };
  return (
    <>
      <TextField {...props} name="pasted" long value={text.value} onValue={take} />
      {notKept.value.length > 0 && (
        <Notice title={say`Not kept: ${notKept.value.join(say`, `)}.`}>
          <p>{props.kept}</p>
        </Notice>
      )}
      {rows.value.length > 0 && (
        <PastePreview
          {...props}
          onCells={(cells) => {
            rows.value = rows.value.map((row) => (row.line === cells.line ? cells : row));
          }}
          onLeaveOut={(line) => {
            rows.value = rows.value.filter((row) => row.line !== line);
          }}
        />
      )}
    </>
  );
}

/** The same on a page of its own, which saves what the rows become all at once. */
export function PasteForm<Column extends string, Row extends Proposed<Column>>(
  props: PasteBoxProps<Column, Row> & {
    readonly drafts: readonly Draft[];
    readonly save: string;
    /** Where what was saved is listed. */
    readonly to: string;
  },
) {
  const saving = useSaving();
  const { proposed, drafts } = props;
  const left = toFix(proposed).length;
  if (useClosed() !== undefined) return null;
  return (
    <>
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <PasteBox {...props} />
      {proposed.length === 0 ? (
        <p class="none">{say`What it becomes is shown here first; nothing is saved before you say
          so.`}</p>
      ) : (
        <div class="form-end">
          <Button
            kind="main"
            disabled={saving.busy || left > 0 || drafts.length === 0}
            onClick={() => void saving.save(done(drafts), () => go(props.to))}
          >
            {props.save}
          </Button>
          {left > 0 && (
            <span class="soft">{say.count(
              left,
            )`# row to fix first, or leave out.|# rows to fix first, or leave out.`}</span>
          )}
        </div>
      )}
    </>
  );
}

/** Rows that wait for a person before the list can be saved. */
export function toFix<Row extends Pick<Proposed<string>, 'state'>>(
  proposed: readonly Row[],
): Row[] {
  return proposed.filter((row) => row.state === 'fix');
}
