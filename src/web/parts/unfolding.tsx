import { useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { Later } from './later.tsx';

/** A part that is folded away, and fetched only when it is opened for the first time. */
export function Unfolding(props: {
  readonly words: string;
  readonly look: string;
  /** Must stay the same (see Later). */
  readonly load: () => Promise<ComponentType>;
}) {
  const opened = useSignal(false);
  return (
    <details
      class={props.look}
      onToggle={(event) => {
        opened.value ||= event.currentTarget.open;
      }}
    >
      <summary>{props.words}</summary>
      {opened.value && <Later load={props.load} />}
    </details>
  );
}
