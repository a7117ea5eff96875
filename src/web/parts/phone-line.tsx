import type { ErrorAnswer } from '../../contract/api.ts';
import { useBook } from '../book.ts';
import { newVersion } from '../offline/keep-app-offline.ts';
import { say } from '../say.ts';
import { Button } from './button.tsx';

/**
 * One quiet line under the head while this phone and the server are apart: how many records are
 * only here, what the server did not take, or that there is no connection. Nothing while all is
 * saved.
 */
export function PhoneLine() {
  const book = useBook();
  const { waiting, held, aside } = book.onPhone.value;
  const trouble = book.trouble.value;
  const records = waiting.reduce((sum, { ids }) => sum + ids.length, 0);
  const toLookAt = held.length + aside.length;
  const start = newVersion.value;
  const quiet = records === 0 && toLookAt === 0 && trouble === undefined && start === undefined;
  if (quiet && book.keeps) return null;
  return (
    <aside class="phone-line no-print" aria-label={say`This phone and the server`}>
      {!book.keeps && (
        <a class="phone-held" href="/phone">
          <span aria-hidden="true">▲</span> {say`Nothing is kept on this phone`}
        </a>
      )}
      {toLookAt > 0 && (
        <a class="phone-held" href="/phone">
          <span aria-hidden="true">▲</span>{' '}
          {say.count(toLookAt)`# not taken by the server|# not taken by the server`}
        </a>
      )}
      {(records > 0 || trouble !== undefined) && (
        <a class="phone-mark" href="/phone">
          {records > 0
            ? say.count(records)`# record saved on this phone|# records saved on this phone`
            : why(trouble)}
        </a>
      )}
      {start !== undefined && <NewVersion start={start} />}
    </aside>
  );
}

const WHY: Readonly<Record<string, string>> = {
  no_answer: say`No connection`,
  not_signed_in: say`Not signed in`,
  phone_store_failed: say`Load the app again`,
};

function why(trouble: ErrorAnswer | undefined): string {
  return WHY[trouble?.name ?? ''] ?? say`Server not reached`;
}

function NewVersion({ start }: { readonly start: () => void }) {
  return (
    <span class="phone-version">
      {say`A newer version of Cratebook is ready.`}{' '}
      <Button quiet onClick={start}>
        {say`Start it`}
      </Button>
    </span>
  );
}
