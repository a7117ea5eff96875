import './share.css';
import { useCallback, useMemo, useRef, useState } from 'preact/hooks';
import { done, refused } from '../../../base/outcome.ts';
import { type PoolShare, poolShare } from '../../../questions/share/pool-share.ts';
import { poolWeights } from '../../../questions/share/pool-weights.ts';
import { type ShareSheet as Sheet, shareSheet } from '../../../questions/share/share-sheet.ts';
import { shareCheck } from '../../../questions/share-check.ts';
import { productName, sellerName } from '../../../statements/account-name.ts';
import { poolRefusalWords } from '../../../statements/pool-refusal-words.ts';
import { capitalised } from '../../../statements/sentence.ts';
import { lockWords, sheetRefusalWords } from '../../../statements/share-words.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { LateField, useLate } from '../../parts/closed-season.tsx';
import { ErrorSummary, Notice } from '../../parts/notice.tsx';
import { useSaving } from '../../parts/saving.ts';
import type { OnCell } from './share-cell.tsx';
import { ShareRule } from './share-rule.tsx';
import { ShareTable } from './share-table.tsx';
import { lockedCount, readSheet, type SheetTyped, withCell } from './sheet-typed.ts';
import { WhyFair } from './why-fair.tsx';

/** A pool's share-out: filled in fairly at once; what is typed stays, the rest follows. */
export function ShareSheet(props: {
  /** `stall:<stall>`, `post` or `gift`. */
  readonly pool: string;
  /** The day of the share-out (`YYYY-MM-DD`). */
  readonly date: string;
}) {
  const { ledger } = useBook();
  const waiting = poolShare(ledger, props.pool);
  if (!waiting.ok) {
    return (
      <Notice title="This pool cannot be shared out.">
        <p>{capitalised(poolRefusalWords(waiting.refusal))}.</p>
      </Notice>
    );
  }
  return <OpenSheet {...props} start={waiting.value} />;
}

function OpenSheet(props: {
  readonly pool: string;
  readonly date: string;
  readonly start: PoolShare;
}) {
  const { ledger } = useBook();
  const { start } = props;
  const [typed, setTyped] = useState<SheetTyped>({
    by: start.by,
    method: start.method,
    byHand: {},
    locked: {},
    also: [],
  });
  const onCell = useCallback<OnCell>((seller, product, text) => {
    setTyped((now) => ({ ...now, locked: withCell(now.locked, seller, product, text) }));
  }, []);
  const pool = usePool(props.pool, typed, start);
  const { changes, errors } = readSheet(typed);
  const worked = shareSheet(pool, changes);
  const last = useRef<Sheet | undefined>(undefined);
  if (worked.ok) last.current = worked.value;
  const saving = useSaving();
  const late = useLate();
  const sheet = worked.ok ? worked.value : last.current;
  if (sheet === undefined) return null;
  const names = {
    seller: (id: string) => sellerName(ledger.setup, id),
    product: (id: string) => productName(ledger.setup, id),
  };
  const check = worked.ok ? worked.value.check : shareCheck(pool.products, changes.locked);
  const refusal = worked.ok ? undefined : sheetRefusalWords(worked.refusal, names);
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    const wrong = [...errors, ...late.errors];
    if (refusal !== undefined) wrong.push({ field: '', words: refusal });
    const given = Object.entries(sheet.shared.lines).filter(([, lines]) => sum(lines) > 0);
    const draft = {
      kind: 'shareout' as const,
      date: props.date,
      pool: props.pool,
      lines: Object.fromEntries(given),
      ...late.field,
    };
    void saving.save(wrong.length > 0 ? refused(wrong) : done([draft]));
  };
  const errorOf = (field: string) => errors.find((error) => error.field === field)?.words;
  const hasMinutes = poolWeights(ledger, props.pool, 'minutes').by === 'minutes';
  return (
    <form class="share-sheet" onSubmit={save} noValidate>
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <ShareRule pool={pool} hasMinutes={hasMinutes} typed={typed} onTyped={setTyped} />
      <ShareTable
        sheet={sheet}
        check={check}
        typed={typed}
        onTyped={setTyped}
        onCell={onCell}
        errorOf={errorOf}
      />
      <div class="share-said" role="status">
        {refusal !== undefined && <p class="error-text">{refusal}</p>}
        {errors.length > 0 && <p class="error-text">Write whole numbers in the marked cells.</p>}
        {worked.ok && lockWords(sheet, names).map((words) => <p key={words}>{words}</p>)}
      </div>
      <SheetVerbs typed={typed} onTyped={setTyped} listed={sheet.input.sellers.length} />
      <WhyFair sheet={sheet} names={names} />
      <LateField late={late} error={saving.errorOf('late')} />
      <Button kind="main" submit disabled={saving.busy}>
        Save the share-out
      </Button>
    </form>
  );
}

/** The pool with the weights and rule as chosen; the season's fairness is worked out only then. */
function usePool(pool: string, { by, method }: SheetTyped, start: PoolShare): PoolShare {
  const { ledger, version } = useBook();
  return useMemo(() => {
    const chosen = poolShare(ledger, pool, { by: by === 'hand' ? undefined : by, method });
    return chosen.ok ? chosen.value : start;
  }, [ledger, version.value, pool, by, method]);
}

function SheetVerbs(props: {
  readonly typed: SheetTyped;
  readonly onTyped: (typed: SheetTyped) => void;
  readonly listed: number;
}) {
  const { setup } = useBook().ledger;
  const { typed } = props;
  const active = [...setup.sellers.values()].filter((seller) => seller.active);
  const locked = lockedCount(typed.locked);
  return (
    <p class="button-row">
      {locked > 0 && (
        <Button onClick={() => props.onTyped({ ...typed, locked: {} })}>
          {locked === 1 ? 'Open the lock' : `Open all ${locked} locks`}
        </Button>
      )}
      {active.length > props.listed && (
        <Button
          onClick={() =>
            props.onTyped({ ...typed, also: active.map(({ seller }) => seller).sort() })
          }
        >
          List all active sellers
        </Button>
      )}
    </p>
  );
}

function sum(lines: Readonly<Record<string, number>>): number {
  return Object.values(lines).reduce((all, each) => all + each, 0);
}
