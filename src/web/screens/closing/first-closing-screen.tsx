import '../../styles/tasks.css';
import './closing.css';
import '../../help/help.css';
import { useEffect, useRef } from 'preact/hooks';
import type { ClosingGroup } from '../../../questions/closing/closing-item.ts';
import { closingList } from '../../../questions/closing-list.ts';
import { useBook } from '../../book.ts';
import { ClosedNotice } from '../../parts/closed-season.tsx';
import { Page } from '../../parts/page.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import type { ScreenProps } from '../../routes.ts';
import { say } from '../../say.ts';
import { closingGroups } from './closing-groups.ts';
import { ClosingRow } from './closing-row.tsx';

const ABOUT: Readonly<Record<ClosingGroup, string>> = {
  goods: say`Count the stockroom, then decide what becomes of the goods that are left.`,
  families: say`Hand out the statements, and bring every family to zero.`,
  stalls: say`Settle every stall, and share out what it sold.`,
  money: say`Bank the cash, match the bank, and bring what the supplier is owed to zero.`,
  prizes: say`Ask for the choices that are missing, then order.`,
  records: say`Settle what two people wrote apart, and look at what is out of the ordinary.`,
  dates: say`Mind the days that are still to come.`,
};

/** A first closing walked through: one group of the real closing list at a time, then the end. */
export function FirstClosingScreen({ search }: ScreenProps) {
  const book = useBook();
  const { items } = closingList(book.ledger, book.workingDay());
  const steps = closingGroups.filter(([group]) => items.some((item) => item.group === group));
  const at = Math.min(Math.max(1, Number(search.get('step')) || 1), steps.length + 1);
  const [group, words] = steps[at - 1] ?? [undefined, say`Close the season`];
  useTitleFocus(at);
  const open = items.filter((item) => item.group === group && item.state === 'open');
  return (
    <Page
      title={words}
      above={<a href="/closing">{say`Closing list`}</a>}
      lead={say`A first closing, step ${at} of ${steps.length + 1}.`}
    >
      <ClosedNotice />
      {group === undefined ? <TheEnd /> : <p class="walk-about">{ABOUT[group]}</p>}
      {group !== undefined && open.length === 0 && (
        <p>
          <StateMark mark="done" word={say`nothing open`} />
        </p>
      )}
      <ul class="task-list">
        {open.map((item) => (
          <ClosingRow key={item.item} item={item} />
        ))}
      </ul>
      <Steps at={at} of={steps.length + 1} />
    </Page>
  );
}

/** A step is a page of its own to whoever reads it aloud, though its address has the same path. */
function useTitleFocus(at: number): void {
  const before = useRef(at);
  useEffect(() => {
    if (before.current !== at) document.querySelector<HTMLElement>('main h1')?.focus();
    before.current = at;
  }, [at]);
}

function TheEnd() {
  return (
    <>
      <p>{say`Print the season proof, and look through the check page with a second person.`}</p>
      <p>
        <a class="button button-main" href="/closing/close">
          {say`Check before closing`}
        </a>
      </p>
    </>
  );
}

function Steps({ at, of }: { readonly at: number; readonly of: number }) {
  const to = (step: number) => `/closing/first?step=${step}`;
  return (
    <nav class="walk-steps no-print" aria-label={say`Steps`}>
      {at > 1 ? (
        <a class="button button-plain" href={to(at - 1)}>
          {say`Step before`}
        </a>
      ) : (
        <span />
      )}
      {at < of && (
        <a class="button button-main" href={to(at + 1)}>
          {say`Next step`}
        </a>
      )}
    </nav>
  );
}
