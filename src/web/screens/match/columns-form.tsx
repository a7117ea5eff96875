import { useState } from 'preact/hooks';
import { Button } from '../../parts/button.tsx';
import { SelectField } from '../../parts/field.tsx';
import { say } from '../../say.ts';

/** One thing that a column can be. */
export interface ColumnRole {
  readonly name: string;
  readonly label: string;
  readonly needed?: boolean;
}

export type ColumnsTyped = Readonly<Record<string, string>>;

const DAYS = [
  { value: 'year-month-day', words: say`2027-03-04: year, month, day` },
  { value: 'month-day-year', words: say`03/04/2027: month first` },
  { value: 'day-month-year', words: say`04/03/2027: day first` },
];
const DECIMALS = [
  { value: '.', words: '1,234.50' },
  { value: ',', words: '1.234,50' },
];

/** Which column of the file is what; what is said is kept for files with the same heads. */
export function ColumnsForm(props: {
  readonly heads: readonly string[];
  readonly roles: readonly ColumnRole[];
  readonly start: ColumnsTyped;
  readonly onSaid: (typed: ColumnsTyped) => void;
}) {
  const [typed, setTyped] = useState(props.start);
  const set = (name: string) => (value: string) => setTyped({ ...typed, [name]: value });
  const heads = props.heads.filter((head) => head !== '');
  const options = [...new Set(heads)].map((value) => ({ value, words: value }));
  return (
    <form
      class="form"
      onSubmit={(event) => {
        event.preventDefault();
        props.onSaid(typed);
      }}
    >
      <h2 class="column-head">{say`Columns of the file`}</h2>
      <div class="match-columns">
        {props.roles.map(({ name, label, needed }) => (
          <SelectField
            key={name}
            label={label}
            optional={needed !== true}
            value={typed[name] ?? ''}
            onValue={set(name)}
            options={options}
            empty={say`none`}
          />
        ))}
        <HowWritten typed={typed} set={set} />
      </div>
      <Button submit kind="main">
        {say`Read the file so`}
      </Button>
    </form>
  );
}

function HowWritten(props: {
  readonly typed: ColumnsTyped;
  readonly set: (name: string) => (value: string) => void;
}) {
  return (
    <>
      <SelectField
        label={say`How days are written`}
        value={props.typed.days ?? ''}
        onValue={props.set('days')}
        options={DAYS}
        empty={say`please choose`}
      />
      <SelectField
        label={say`How amounts are written`}
        value={props.typed.decimals ?? '.'}
        onValue={props.set('decimals')}
        options={DECIMALS}
      />
    </>
  );
}
