import { useId } from 'preact/hooks';
import { type CountersNotice, countersNotice } from '../../questions/counters.ts';
import { useBook } from '../book.ts';
import { say } from '../say.ts';
import { Field } from './field.tsx';

export type CountersTyped = readonly [string, string];

/** The two names as a record wants them: both, or none at all. */
export function countersOf(typed: CountersTyped): [string, string] | undefined {
  const [first, second] = [typed[0].trim(), typed[1].trim()];
  return first === '' || second === '' ? undefined : [first, second];
}

const WORDS: Readonly<Record<Exclude<CountersNotice, 'two' | 'nobody'>, string>> = {
  one: say`One person only. It can be saved; a second adult who counts too makes it safe.`,
  'same-person': say`Both names are the same person. Ask another adult to count too.`,
  'same-family': say`Both are of one household. Better that an adult of another household counts
    too.`,
  'same-last-name': say`Both have the same last name. If they share a home, let an adult of another
    one count too.`,
};

/** The two adults who counted: warned about, never refused. */
export function CountersField(props: {
  readonly value: CountersTyped;
  readonly onValue: (value: CountersTyped) => void;
}) {
  const { ledger } = useBook();
  const list = useId();
  const [first, second] = props.value;
  const notice = countersNotice(ledger, first, second);
  const warned = notice !== 'two' && notice !== 'nobody';
  return (
    <fieldset class="field counters">
      <legend>{say`Counted by two adults`}</legend>
      <div class="field-row">
        <Name
          label={say`First counter`}
          list={list}
          value={first}
          onValue={(n) => props.onValue([n, second])}
        />
        <Name
          label={say`Second counter`}
          list={list}
          value={second}
          onValue={(n) => props.onValue([first, n])}
        />
      </div>
      <datalist id={list}>
        {[...ledger.setup.families.values()].map(({ family, name }) => (
          <option key={family} value={name} />
        ))}
      </datalist>
      <p class="field-hint counters-notice" role="status">
        {warned && (
          <>
            <span class="shape shape-difference" aria-hidden="true">
              ▲
            </span>{' '}
            {WORDS[notice]}
          </>
        )}
      </p>
    </fieldset>
  );
}

function Name(props: {
  readonly label: string;
  readonly list: string;
  readonly value: string;
  readonly onValue: (name: string) => void;
}) {
  return (
    <Field
      label={props.label}
      control={(control) => (
        <input
          {...control}
          type="text"
          list={props.list}
          autocomplete="off"
          maxLength={200}
          value={props.value}
          onInput={(event) => props.onValue(event.currentTarget.value)}
        />
      )}
    />
  );
}
