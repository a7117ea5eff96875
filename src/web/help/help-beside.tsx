import { useSignal } from '@preact/signals';
import { address } from '../navigation.ts';
import { Later } from '../parts/later.tsx';
import { say } from '../say.ts';
import { topicAt } from './topic-at.ts';

const content = async () => (await import('./help-content.tsx')).HelpContent;

/** Help for the task of this page, folded away; its words are fetched when it is opened. */
export function HelpBeside() {
  const open = useSignal(false);
  const task = topicAt(address.value.path);
  if (task === undefined) return null;
  return (
    <details
      class="help no-print"
      key={task}
      onToggle={(event) => {
        open.value = event.currentTarget.open;
      }}
    >
      <summary>{say`How this works`}</summary>
      {open.value && <Later load={content} />}
    </details>
  );
}
