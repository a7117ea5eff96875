import { Button } from '../parts/button.tsx';
import { say } from '../say.ts';
import { madeUpOpen, putAway } from './made-up-open.ts';

/** The striped band over every page of the made-up season, with the one tap that leads back. */
export function MadeUpLine() {
  if (madeUpOpen.value === undefined) return null;
  return (
    <aside class="made-up-line" aria-label={say`Made-up season`}>
      <div>
        <b>{say`Made-up season: nothing here is real.`}</b>
        <Button kind="main" onClick={putAway}>
          {say`Back to your book`}
        </Button>
      </div>
    </aside>
  );
}
