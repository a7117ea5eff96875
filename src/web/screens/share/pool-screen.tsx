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

/** A pool that is no stall's: posted orders or gift units without a seller. */
export function PoolScreen({ params }: ScreenProps) {
  const book = useBook();
  const { ledger } = book;
  const pool = params.pool ?? '';
  const units = ledger.balances.unitsOf('credit', `pool:${pool}`);
  const lines = ledger.balances.linesOf('credit', `pool:${pool}`);
  const open = Object.keys(lines).length > 0;
  const account = `/accounts/credit/${encodeURIComponent(`pool:${pool}`)}`;
  const shareouts = ledger
    .movements()
    .filter((movement) => movement.kind === 'shareout' && movement.pool === pool);
  return (
    <Page
      title={poolName(ledger.setup, pool)}
      above={<a href="/closing">Closing list</a>}
      lead={
        open ? (
          <Units units={units} word="units not yet shared" to={account} />
        ) : (
          <StateMark mark="done" word="0 units not yet shared" />
        )
      }
    >
      {open && <LiftLink pool={pool} />}
      {open && <ShareSheet key={shareouts.length} pool={pool} date={book.workingDay()} />}
      {shareouts.length > 0 && (
        <section aria-labelledby="earlier">
          <h2 id="earlier">Share-outs so far</h2>
          <EarlierShareOuts ids={shareouts.map(({ id }) => id)} />
        </section>
      )}
    </Page>
  );
}
