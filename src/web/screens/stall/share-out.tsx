import type { StallStanding } from '../../../questions/stall-settlement.ts';
import { useBook } from '../../book.ts';
import { StateMark } from '../../parts/state-mark.tsx';
import { say } from '../../say.ts';
import { EarlierShareOuts } from '../share/earlier-share-outs.tsx';
import { LiftLink } from '../share/lift-link.tsx';
import { ShareSheet } from '../share/share-sheet.tsx';

/** The stall's credit: what has been shared, and a sheet for what has not. */
export function ShareOut({ standing }: { readonly standing: StallStanding }) {
  const book = useBook();
  const { shareouts, closes, stall, notShared } = standing;
  const pool = `stall:${stall.stall}`;
  const open = Object.keys(notShared).length > 0;
  return (
    <section aria-labelledby="share-out">
      <h2 id="share-out">{say`Share-out`}</h2>
      <EarlierShareOuts ids={shareouts.map(({ id }) => id)} />
      {open ? (
        <>
          <LiftLink pool={pool} />
          <ShareSheet
            key={shareouts.length}
            pool={pool}
            date={closes.at(-1)?.date ?? book.workingDay()}
          />
        </>
      ) : (
        <p>
          <StateMark mark="done" word={say`0 units not yet shared`} />
        </p>
      )}
    </section>
  );
}
