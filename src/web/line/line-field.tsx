import { say } from '../say.ts';
import type { WrittenLine } from './use-line.ts';

/** The line itself, a combobox: the focus stays in it while the arrows go through the readings. */
export function LineField(props: { readonly id: string; readonly line: WrittenLine }) {
  const { id, line } = props;
  const readings = line.read.ok ? line.read.value.length : 0;
  return (
    <>
      <label for={`${id}-line`}>{say`What happened`}</label>
      <input
        ref={line.field}
        id={`${id}-line`}
        type="text"
        role="combobox"
        autocomplete="off"
        autocapitalize="none"
        spellcheck={false}
        aria-expanded={readings > 0}
        aria-controls={`${id}-readings`}
        aria-autocomplete="list"
        aria-activedescendant={
          line.chosen === undefined ? undefined : `${id}-reading-${line.place}`
        }
        value={line.text}
        onInput={(event) => line.write(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
          event.preventDefault();
          line.step(event.key === 'ArrowDown' ? 1 : -1);
        }}
      />
    </>
  );
}
