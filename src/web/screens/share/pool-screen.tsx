import { say } from '../../say.ts';
import '../../styles/tasks.css';
import { poolName } from '../../../statements/pool-name.ts';
import { useBook } from '../../book.ts';
import { Units } from '../../parts/figures.tsx';
import { Page } from '../../parts/page.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import type { ScreenProps } from '../../routes.ts';
import { EarlierShareOuts } from './earlier-share-outs.tsx';
import { LiftLink } from './lift-link.tsx';
import { ShareSheet } from './share-sheet.tsx';

/** A pool of the book; mostly one that is no stall's, since a stall has a page of its own. */
export function PoolScreen({ params }: ScreenProps) {
  const { setup } = useBook().ledger;
  const pool = params.pool ?? '';
  const stall = pool.startsWith('stall:') ? pool.slice('stall:'.length) : '';
  if (pool === 'post' || pool === 'gift' || setup.stalls.has(stall)) return <Pool pool={pool} />;
  return (
    <Page title={say`Pool`} above={ABOVE}>
      <p>{say`There is no such pool in this book. The closing list has those that are not yet
        shared.`}</p>
    </Page>
  );
}

const ABOVE = <a href="/closing">{say`Closing list`}</a>;

function Pool({ pool }: { readonly pool: string }) {
  const book = useBook();
  const { ledger } = book;
  const units = ledger.balances.unitsOf('credit', `pool:${pool}`);
  const lines = ledger.balances.linesOf('credit', `pool:${pool}`);
  const open = Object.keys(lines).length > 0;
  const account = `/accounts/credit/${encodeURIComponent(`pool:${pool}`)}`;
  const shareouts = ledger
    .movements()
    .filter((movement) => movement.kind === 'shareout' && movement.pool === pool);
  return (
    <Page
      title={poolName(ledger.setup, pool, say)}
      above={ABOVE}
      lead={
        open ? (
          <Units
            units={units}
            words={say.count(units)`# unit not yet shared|# units not yet shared`}
            to={account}
          />
        ) : (
          <StateMark mark="done" word={say`0 units not yet shared`} />
        )
      }
    >
      {open && <LiftLink pool={pool} />}
      {open && <ShareSheet key={shareouts.length} pool={pool} date={book.workingDay()} />}
      {shareouts.length > 0 && (
        <section aria-labelledby="earlier">
          <h2 id="earlier">{say`Share-outs so far`}</h2>
          <EarlierShareOuts ids={shareouts.map(({ id }) => id)} />
        </section>
      )}
    </Page>
  );
}
