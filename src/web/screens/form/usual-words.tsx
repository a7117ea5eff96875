import { say } from '../../say.ts';

/** What is mostly written into a text field, one tap each; own words stay beside what is tapped. */
export function UsualWords(props: {
  readonly usual: readonly string[];
  readonly value: string;
  readonly onValue: (value: string) => void;
}) {
  const { usual, value } = props;
  const own = value.trim();
  const isOwn = own !== '' && !usual.includes(own);
  return (
    <fieldset class="likely">
      <legend class="field-hint">{say`Usual reasons`}</legend>
      <div class="chips">
        {usual.map((words) => (
          <button
            key={words}
            type="button"
            class="chip-button"
            aria-pressed={own === words}
            onClick={() => props.onValue(isOwn ? [words, own].join(say`, `) : words)}
          >
            {words}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
