import { say } from '../../say.ts';
import './share.css';
import { done, refused } from '../../../base/outcome.ts';
import { type PoolShare, poolShare } from '../../../questions/share/pool-share.ts';
import { poolWeights } from '../../../questions/share/pool-weights.ts';
import { poolRefusalWords } from '../../../statements/pool-refusal-words.ts';
import { capitalised, sentence } from '../../../statements/sentence.ts';
import { lockWords } from '../../../statements/share-words.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { LateField, useLate } from '../../parts/closed-season.tsx';
import { ErrorSummary, Notice } from '../../parts/notice.tsx';
import { useSaving } from '../../parts/saving.ts';
import { ShareRule } from './share-rule.tsx';
import { ShareTable } from './share-table.tsx';
import { shareoutDraft } from './shareout-draft.ts';
import { lockedCount, type SheetTyped } from './sheet-typed.ts';
import { useSheet } from './use-sheet.ts';
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
      <Notice title={say`This pool cannot be shared out.`}>
        <p>{sentence(capitalised(say.told(poolRefusalWords(waiting.refusal))), say)}</p>
      </Notice>
    );
  }
  return <SheetForm {...props} start={waiting.value} />;
}

function SheetForm(props: {
  readonly pool: string;
  readonly date: string;
  readonly start: PoolShare;
}) {
  const { ledger } = useBook();
  const open = useSheet(props.pool, props.start);
  const saving = useSaving();
  const late = useLate();
  const { sheet, typed, onTyped, errors, refusal, names } = open;
  if (sheet === undefined) return null;
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    const wrong = [...errors, ...late.errors];
    if (refusal !== undefined) wrong.push({ field: '', words: refusal });
    const draft = shareoutDraft(props.pool, props.date, sheet.shared, {
      basis: typed.by,
      ...late.field,
    });
    void saving.save(wrong.length > 0 ? refused(wrong) : done([draft]));
  };
  const hasMinutes = poolWeights(ledger, props.pool, 'minutes').by === 'minutes';
  return (
    <form class="share-sheet" onSubmit={save} noValidate>
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <ShareRule pool={open.pool} hasMinutes={hasMinutes} typed={typed} onTyped={onTyped} />
      <ShareTable {...open} sheet={sheet} />
      <div class="share-said" role="status">
        {refusal !== undefined && <p class="error-text">{refusal}</p>}
        {errors.length > 0 && (
          <p class="error-text">{say`Write whole numbers in the marked cells.`}</p>
        )}
        {refusal === undefined &&
          lockWords(sheet, names, say).map((words) => <p key={words}>{words}</p>)}
      </div>
      <SheetVerbs typed={typed} onTyped={onTyped} listed={sheet.input.sellers.length} />
      <WhyFair sheet={sheet} names={names} />
      <LateField late={late} error={saving.errorOf('late')} />
      <Button kind="main" submit disabled={saving.busy}>
        {say`Save the share-out`}
      </Button>
    </form>
  );
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
          {say.count(locked)`Open the lock|Open all # locks`}
        </Button>
      )}
      {active.length > props.listed && (
        <Button
          onClick={() =>
            props.onTyped({ ...typed, also: active.map(({ seller }) => seller).sort() })
          }
        >
          {say`List all active sellers`}
        </Button>
      )}
    </p>
  );
}
