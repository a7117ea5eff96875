import { say } from '../say.ts';
import { useClosed } from './closed-season.tsx';

/** One line under the head of a closed season, on every page: what is read-only, what is not. */
export function ClosedLine() {
  const closed = useClosed();
  if (closed === undefined) return null;
  return (
    <aside class="phone-line no-print" aria-label={say`Closed season`}>
      <a href="/closing">{say`Closed on ${say.day(closed.date)}`}</a>{' '}
      <span>{say`Read-only, but for records that come late and say why.`}</span>
    </aside>
  );
}
