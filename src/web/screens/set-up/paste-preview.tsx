import type { PastedRow, ProposedRow } from '../../../intake/pasted-sellers.ts';
import { capitalised, sentence } from '../../../statements/sentence.ts';
import { Button } from '../../parts/button.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { say } from '../../say.ts';

const STATES = {
  new: <StateMark mark="ahead" word={say`new`} />,
  already: <StateMark mark="not-needed" word={say`already there`} />,
  fix: <StateMark mark="open" word={say`to fix`} />,
} as const;

/** What the pasted rows would become, each cell editable, each finding beside its cell. */
export function PastePreview(props: {
  readonly proposed: readonly ProposedRow[];
  readonly onCells: (cells: PastedRow) => void;
  readonly onLeaveOut: (line: number) => void;
}) {
  return (
    <div class="table-scroll">
      <table class="table paste-preview">
        <caption>{say`Preview`}</caption>
        <thead>
          <tr>
            <th scope="col">{say`Row`}</th>
            <th scope="col">{say`Seller`}</th>
            <th scope="col">{say`Family`}</th>
            <th scope="col">{say`Goal`}</th>
            <th scope="col">{say`Becomes`}</th>
            <th scope="col">{say`Change`}</th>
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

function PreviewRow(props: {
  readonly row: ProposedRow;
  readonly onCells: (cells: PastedRow) => void;
  readonly onLeaveOut: (line: number) => void;
}) {
  const { row } = props;
  const { line } = row.cells;
  return (
    <tr class={`paste-${row.state}`}>
      <th scope="row">{line}</th>
      <Cell field="seller" words={say`Seller`} {...props} />
      <Cell field="family" words={say`Family`} {...props} />
      <Cell field="goal" words={say`Goal`} {...props} />
      <td>
        {STATES[row.state]}
        {row.state === 'new' && (
          <div class="small soft">
            {row.seller.name} ({row.seller.seller}),{' '}
            {row.family.isNew
              ? say`new family ${row.family.family}`
              : say`family ${row.family.family}`}
          </div>
        )}
      </td>
      <td>
        <Button quiet label={say`Leave out row ${line}`} onClick={() => props.onLeaveOut(line)}>
          {say`Leave out`}
        </Button>
      </td>
    </tr>
  );
}

function Cell(props: {
  readonly row: ProposedRow;
  readonly field: 'seller' | 'family' | 'goal';
  readonly words: string;
  readonly onCells: (cells: PastedRow) => void;
}) {
  const { cells, findings } = props.row;
  const own = findings.filter((finding) => finding.field === props.field);
  const id = `cell-${cells.line}-${props.field}`;
  const wrong = own.some((finding) => finding.severity === 'error');
  return (
    <td>
      <input
        id={id}
        type="text"
        autocomplete="off"
        aria-label={say`${props.words}, row ${cells.line}`}
        aria-invalid={wrong ? 'true' : undefined}
        aria-describedby={own.length > 0 ? `${id}-findings` : undefined}
        value={cells[props.field]}
        onChange={(event) =>
          props.onCells({ ...cells, [props.field]: event.currentTarget.value.trim() })
        }
      />
      {own.length > 0 && (
        <div id={`${id}-findings`}>
          {own.map((finding) => (
            <p key={finding.wanted} class={wrong ? 'error-text small' : 'small soft'}>
              {sentence(capitalised(say.told(finding.wanted)), say)}
            </p>
          ))}
        </div>
      )}
    </td>
  );
}
