import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './closing.css';
import type { ClosingItem } from '../../../questions/closing/closing-item.ts';
import { closingList } from '../../../questions/closing-list.ts';
import { useBook } from '../../book.ts';
import { useClosed } from '../../parts/closed-season.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import { closingGroups } from './closing-groups.ts';
import { ClosingRow } from './closing-row.tsx';

/**
 * Everything that must come out even, and every paper that must exist, before the season closes.
 */
export function ClosingScreen() {
  const book = useBook();
  const closed = useClosed();
  const { items, ready } = closingList(book.ledger, book.workingDay());
  const open = items.filter((item) => item.state === 'open').length;
  const done = items.filter((item) => item.state === 'done').length;
  return (
    <Page
      title={say`Closing list`}
      lead={say`${open} open, ${done} done, ${items.length - open - done} not needed.`}
      actions={<Actions />}
    >
      {closed !== undefined && (
        <Notice tone="done" title={say`The season was closed on ${say.day(closed.date)}.`}>
          <p>
            {closed.second !== undefined && `${say`Second person: ${closed.second}.`} `}
            {closed.reason !== undefined && `${say`Reason: ${closed.reason}`} `}
            {say`Set-up is read-only; records that come late say why.`}
          </p>
        </Notice>
      )}
      {closingGroups.map(([group, words]) => (
        <Group key={group} words={words} items={items.filter((item) => item.group === group)} />
      ))}
      {closed === undefined && (
        <p class="form-end no-print">
          <a class="button button-main" href="/closing/close">
            {ready ? say`Close the season` : say`Check before closing`}
          </a>
        </p>
      )}
    </Page>
  );
}

function Actions() {
  return (
    <>
      <PaperLinks paper="season-proof" words={say`Season proof`} print />
      <a class="jump" href="/closing/first">
        {say`A first closing, step by step`}
      </a>
    </>
  );
}

/** Open items first, each with what is left; what is done or not needed folds away. */
function Group(props: { readonly words: string; readonly items: readonly ClosingItem[] }) {
  const open = props.items.filter((item) => item.state === 'open');
  const rest = props.items.filter((item) => item.state !== 'open');
  if (props.items.length === 0) return null;
  const id = `group-${props.words.replace(/\W/g, '-')}`;
  return (
    <section aria-labelledby={id} class="closing-group">
      <h2 id={id}>
        {props.words}{' '}
        <span class="group-count">
          {open.length === 0 ? say`nothing open` : say`${open.length} open`}
        </span>
      </h2>
      {open.length > 0 && (
        <ul class="task-list">
          {open.map((item) => (
            <ClosingRow key={item.item} item={item} />
          ))}
        </ul>
      )}
      {rest.length > 0 && (
        <details open={open.length === 0 && rest.length <= 3}>
          <summary>{say`${rest.length} done or not needed`}</summary>
          <ul class="task-list">
            {rest.map((item) => (
              <ClosingRow key={item.item} item={item} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
