import type { ErrorAnswer } from '../../contract/api.ts';
import { useBook } from '../book.ts';
import { newVersion } from '../offline/keep-app-offline.ts';
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
    <aside class="phone-line no-print" aria-label="This phone and the server">
      {!book.keeps && (
        <a class="phone-held" href="/phone">
          <span aria-hidden="true">▲</span> Nothing is kept on this phone
        </a>
      )}
      {toLookAt > 0 && (
        <a class="phone-held" href="/phone">
          <span aria-hidden="true">▲</span> {toLookAt} not taken by the server
        </a>
      )}
      {(records > 0 || trouble !== undefined) && (
        <a class="phone-mark" href="/phone">
          {records > 0 ? `${counted(records)} saved on this phone` : why(trouble)}
        </a>
      )}
      {start !== undefined && <NewVersion start={start} />}
    </aside>
  );
}

const WHY: Readonly<Record<string, string>> = {
  no_answer: 'No connection',
  not_signed_in: 'Not signed in',
  phone_store_failed: 'Load the app again',
};

function why(trouble: ErrorAnswer | undefined): string {
  return WHY[trouble?.name ?? ''] ?? 'Server not reached';
}

function NewVersion({ start }: { readonly start: () => void }) {
  return (
    <span class="phone-version">
      A newer version of Cratebook is ready.{' '}
      <Button quiet onClick={start}>
        Start it
      </Button>
    </span>
  );
}

function counted(records: number): string {
  return records === 1 ? '1 record' : `${records} records`;
}
