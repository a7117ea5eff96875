import { Button } from '../parts/button.tsx';
import { say } from '../say.ts';
import { madeUpOpen, putAway } from './made-up-open.ts';

/** The stripe over every page of the made-up book, with the one tap that puts it away. */
export function MadeUpLine() {
  if (madeUpOpen.value === undefined) return null;
  return (
    <aside class="made-up-line no-print" aria-label={say`Made-up book`}>
      <p>{say`Made-up book. Try what you like: your own book is not touched.`}</p>
      <Button kind="main" onClick={putAway}>
        {say`Put it away`}
      </Button>
    </aside>
  );
}
