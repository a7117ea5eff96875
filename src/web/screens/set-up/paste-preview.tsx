import type { ComponentChildren } from 'preact';
import type { PastedRow, Proposed } from '../../../intake/pasted-rows.ts';
import { capitalised, sentence } from '../../../statements/sentence.ts';
import { Button } from '../../parts/button.tsx';
import { fieldId } from '../../parts/field.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { say } from '../../say.ts';

const STATES = {
  new: <StateMark mark="ahead" word={say`new`} />,
  already: <StateMark mark="not-needed" word={say`already there`} />,
  fix: <StateMark mark="open" word={say`to fix`} />,
} as const;

interface Preview<Column extends string, Row extends Proposed<Column>> {
  /** Each with its heading. */
  readonly columns: readonly (readonly [Column, string])[];
  readonly proposed: readonly Row[];
  /** What a new row becomes, in words. */
  readonly becomes: (row: Row) => ComponentChildren;
  readonly onCells: (cells: PastedRow<Column>) => void;
  readonly onLeaveOut: (line: number) => void;
}

/** What the pasted rows would become, each cell editable, each finding beside its cell. */
export function PastePreview<Column extends string, Row extends Proposed<Column>>(
  props: Preview<Column, Row>,
) {
  return (
    <div class="table-scroll stack stack-list">
      <table class="table paste-preview">
        <caption>{say`Preview`}</caption>
        <thead>
          <tr>
            <th scope="col">{say`Row`}</th>
            {props.columns.map(([column, words]) => (
              <th scope="col" key={column}>
                {words}
              </th>
            ))}
            <th scope="col">{say`Becomes`}</th>
          </tr>
        </thead>
        <tbody>
          {props.proposed.map((row) => (
            <PreviewRow key={row.cells.line} row={row} {...props} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function PreviewRow<Column extends string, Row extends Proposed<Column>>(
  props: Preview<Column, Row> & { readonly row: Row },
) {
  const { row } = props;
  const { line } = row.cells;
  return (
    <tr class={`paste-${row.state}`}>
      <th scope="row" data-head={say`Row`}>
        {line}
      </th>
      {props.columns.map(([column, words]) => (
        <Cell key={column} column={column} words={words} row={row} onCells={props.onCells} />
      ))}
      <td>
        {STATES[row.state]}
        {row.state === 'new' && <div class="small soft">{props.becomes(row)}</div>}
        <Button quiet label={say`Leave out row ${line}`} onClick={() => props.onLeaveOut(line)}>
          {say`Leave out`}
        </Button>
      </td>
    </tr>
  );
}

function Cell<Column extends string>(props: {
  readonly row: Proposed<Column>;
  readonly column: Column;
  readonly words: string;
  readonly onCells: (cells: PastedRow<Column>) => void;
}) {
  const { row, column } = props;
  const { cells, findings } = row;
  const own = findings.filter((finding) => finding.field === column);
  const id = fieldId(cellName(cells.line, column));
  const wrong = own.some((finding) => finding.severity === 'error');
  return (
    <td class={`cell-${column}`} data-head={props.words}>
      <input
        id={id}
        type="text"
        autocomplete="off"
        aria-label={say`${props.words}, row ${cells.line}`}
        aria-invalid={wrong ? 'true' : undefined}
        aria-describedby={own.length > 0 ? `${id}-findings` : undefined}
        value={cells[column]}
        onChange={(event) =>
          props.onCells({ ...cells, [column]: event.currentTarget.value.trim() })
        }
      />
      {own.length > 0 && (
        <div id={`${id}-findings`}>
          {own.map((finding) => (
            <p key={finding.wanted} class={wrong ? 'error-text small' : 'small soft'}>
              {findingWords(finding.wanted)}
            </p>
          ))}
        </div>
      )}
    </td>
  );
}

/** The name under which an error summary finds the cell of a row. */
export function cellName(line: number, column: string): string {
  return `cell-${line}-${column}`;
}

export function findingWords(wanted: string): string {
  return sentence(capitalised(say.told(wanted)), say);
}
