import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import '../../styles/tasks.css';
import './share.css';
import { useState } from 'preact/hooks';
import { done, refused } from '../../../base/outcome.ts';
import { levelsUp } from '../../../questions/prizes.ts';
import { liftAllowed } from '../../../questions/share/lift-allowed.ts';
import { poolLift, STEP_WORTH_MOST } from '../../../questions/share/pool-lift.ts';
import { liftAllowedWords, liftWhy } from '../../../statements/lift-words.ts';
import { poolName } from '../../../statements/pool-name.ts';
import { poolRefusalWords } from '../../../statements/pool-refusal-words.ts';
import { capitalised, sentence } from '../../../statements/sentence.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { LateField, useLate } from '../../parts/closed-season.tsx';
import { TextField } from '../../parts/field.tsx';
import { ErrorSummary, type FieldError, Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { useSaving } from '../../parts/saving.ts';
import { typedWhole } from '../../parts/typed.ts';
import type { ScreenProps } from '../../routes.ts';
import { LiftTables } from './lift-tables.tsx';
import { shareoutDraft } from './shareout-draft.ts';

/** A pool given where it reaches most goals and steps, where the group chose so in time. */
export function LiftScreen({ params }: ScreenProps) {
  const { ledger } = useBook();
  const pool = params.pool ?? '';
  const allowed = liftAllowed(ledger);
  return (
    <Page
      title={say`Lift to the next step`}
      above={<a href={poolAddress(pool)}>{poolName(ledger.setup, pool, say)}</a>}
      lead={liftAllowedWords(allowed, say)}
    >
      <p class="lift-why">{liftWhy(say)}</p>
      {allowed.allowed ? (
        <LiftSheet pool={pool} />
      ) : (
        <p>
          {say.pieces`The rule stands in ${link('/set-up/sharing', say`set-up`)}. Share this
            pool ${link(poolAddress(pool), say`on its own sheet`)}.`}
        </p>
      )}
    </Page>
  );
}

/** A stall's pool is shared on the stall's own page. */
function poolAddress(pool: string): string {
  return pool.startsWith('stall:')
    ? `/stalls/${pool.slice('stall:'.length)}`
    : `/pools/${encodeURIComponent(pool)}`;
}

function LiftSheet({ pool }: { readonly pool: string }) {
  const book = useBook();
  const { ledger } = book;
  const [typed, setTyped] = useState<WorthsTyped>({});
  const saving = useSaving();
  const late = useLate();
  const { worths, errors } = readWorths(typed);
  const answer = poolLift(ledger, pool, worths);
  if (!answer.ok) {
    return (
      <Notice title={say`Nothing to lift.`}>
        <p>{sentence(capitalised(say.told(poolRefusalWords(answer.refusal))), say)}</p>
      </Notice>
    );
  }
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    const wrong = [...errors, ...late.errors];
    const date = dayOf(pool, ledger.movements()) ?? book.workingDay();
    const draft = shareoutDraft(pool, date, answer.value.shared, {
      basis: 'lift',
      note: say`Lifted to goals and prize steps`,
      ...late.field,
    });
    void saving.save(wrong.length > 0 ? refused(wrong) : done([draft]));
  };
  return (
    <form onSubmit={save} noValidate>
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <LiftTables lift={answer.value} />
      <StepWorths typed={typed} errors={errors} onTyped={setTyped} />
      <p class="soft">
        {say`Goals come first, then steps, then the lowest totals. Credit counts towards prizes and
          is never money.`}
      </p>
      <LateField late={late} error={saving.errorOf('late')} />
      <Button kind="main" submit disabled={saving.busy}>
        {say`Save this share-out`}
      </Button>
    </form>
  );
}

type WorthsTyped = Readonly<Record<string, string>>;

function StepWorths(props: {
  readonly typed: WorthsTyped;
  readonly errors: readonly FieldError[];
  readonly onTyped: (typed: WorthsTyped) => void;
}) {
  const { ledger } = useBook();
  const { typed, errors } = props;
  return (
    <fieldset class="step-worths">
      <legend>{say`What one more seller at a step counts against other steps`}</legend>
      {levelsUp(ledger).map(({ level, prize, units }) => (
        <TextField
          key={level}
          label={say`${prize}, ${units} units`}
          name={`worth.${level}`}
          inputMode="numeric"
          value={typed[level] ?? '1'}
          error={errors.find(({ field }) => field === `worth.${level}`)?.words}
          onValue={(text) => props.onTyped({ ...typed, [level]: text })}
        />
      ))}
    </fieldset>
  );
}

function readWorths(typed: WorthsTyped) {
  const worths: Record<string, number> = {};
  const errors: FieldError[] = [];
  for (const [level, text] of Object.entries(typed)) {
    const worth = typedWhole(text, 0);
    if (worth.ok && worth.value <= STEP_WORTH_MOST) worths[level] = worth.value;
    else {
      const words = say`Write a whole number from 0 to ${STEP_WORTH_MOST}.`;
      errors.push({ field: `worth.${level}`, words });
    }
  }
  return { worths, errors };
}

/** A stall's credit is shared on the day it was counted. */
function dayOf(
  pool: string,
  movements: readonly { readonly kind: string; readonly date: string }[],
): string | undefined {
  return movements.findLast(
    (movement) =>
      movement.kind === 'stall-close' && 'stall' in movement && pool === `stall:${movement.stall}`,
  )?.date;
}
