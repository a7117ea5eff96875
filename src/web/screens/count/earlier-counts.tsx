import { countDifference, countsLastFirst } from '../../../questions/count-difference.ts';
import { useBook } from '../../book.ts';
import { StateMark } from '../../parts/state-mark.tsx';
import { say } from '../../say.ts';
import { whyCount } from '../../why-address.ts';

/** Counts that are in, last first, without a figure that could be copied into the next one. */
export function EarlierCounts() {
  const { ledger } = useBook();
  const counts = countsLastFirst(ledger);
  if (counts.length === 0) return null;
  return (
    <section aria-labelledby="earlier">
      <h2 id="earlier">{say`Earlier counts`}</h2>
      <ul class="task-list">
        {counts.map((count) => (
          <li class="task-row" key={count.id}>
            <a class="task-link" href={`/count/${count.id}`}>
              {say.day(count.date)}
            </a>
            <span class="task-facts soft">
              {count.counters === undefined ? say`counted by one person` : say.list(count.counters)}
            </span>
            <span class="task-state">
              {countDifference(ledger, count).agrees ? (
                <StateMark mark="done" word={say`agrees`} />
              ) : (
                <>
                  <StateMark mark="open" word={say`does not agree`} />{' '}
                  <a href={whyCount(count.id)}>{say`Why?`}</a>
                </>
              )}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
