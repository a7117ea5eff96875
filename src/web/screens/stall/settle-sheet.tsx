import { useState } from 'preact/hooks';
import { done, refused } from '../../../base/outcome.ts';
import { stallSettlement } from '../../../questions/stall-settlement.ts';
import type { RecordOf } from '../../../records/record.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { LateField, useLate } from '../../parts/closed-season.tsx';
import { CountersField } from '../../parts/counters-field.tsx';
import { DayField } from '../../parts/field.tsx';
import { HaveAgainstShould } from '../../parts/have-against-should.tsx';
import { ErrorSummary, Notice } from '../../parts/notice.tsx';
import { useSaving } from '../../parts/saving.ts';
import { say } from '../../say.ts';
import { CashCount } from './cash-count.tsx';
import { countedToType } from './counted-to-type.ts';
import { FromSheet } from './from-sheet.tsx';
import { GoodsGrid } from './goods-grid.tsx';
import { OtherMoney } from './other-money.tsx';
import { emptyStall, readStall, stallCloseDraft, stallToType } from './stall-typed.ts';
import type { OpenSheet } from './use-sheet.ts';

/** One sheet: goods out, back and damaged, the money counted, and whether the two agree. */
export function SettleSheet(props: {
  readonly stall: RecordOf<'stall'>;
  /** The record that is edited; undefined for the first settling. */
  readonly close: RecordOf<'stall-close'> | undefined;
  /** What the stall's phones wrote: their counts fill the first settling in. */
  readonly open: OpenSheet;
  readonly onDone: () => void;
}) {
  const { ledger, currency } = useBook();
  const { stall, close, open } = props;
  const counted = () =>
    countedToType(open.sheet, stall, ledger, currency) ?? emptyStall(stall.starts.slice(0, 10));
  const [typed, setTyped] = useState(() =>
    close === undefined ? counted() : stallToType(close, ledger, currency),
  );
  const saving = useSaving();
  const late = useLate();
  const read = readStall(stall.stall, typed, ledger, currency);
  const answer = stallSettlement(ledger, read.draft);
  const form = { typed, onTyped: setTyped, errorOf: saving.errorOf };
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    const draft = stallCloseDraft(read, typed, answer.cash);
    const errors = [...(draft.ok ? [] : draft.refusal), ...late.errors];
    const replaces = close === undefined ? {} : { replaces: close.id };
    const checked =
      draft.ok && errors.length === 0
        ? done([{ ...draft.value, ...replaces, ...late.field }])
        : refused(errors);
    void saving.save(checked, props.onDone);
  };
  return (
    <form class="settle-sheet" onSubmit={save} noValidate>
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <DayField
        label={say`Day`}
        name="date"
        value={typed.date}
        onValue={(date) => setTyped({ ...typed, date })}
        error={saving.errorOf('date')}
      />
      {close === undefined && (
        <FromSheet stall={stall.stall} open={open} onFill={() => setTyped(counted())} />
      )}
      <GoodsGrid {...form} settlement={answer} />
      {answer.moreBackThanOut.length > 0 && (
        <Notice tone="stop" title={say`More came back than went out.`}>
          <p>
            {say`Count again:
              ${answer.moreBackThanOut.map((id) => productName(ledger.setup, id)).join(say`, `)}.`}
          </p>
        </Notice>
      )}
      <div class="two-columns">
        <CashCount {...form} cash={answer.cash} />
        <div>
          <OtherMoney {...form} />
          <CountersField
            value={typed.counters}
            onValue={(counters) => setTyped({ ...typed, counters })}
          />
        </div>
      </div>
      <HaveAgainstShould should={answer.should} have={answer.have} difference={answer.difference} />
      <p class="soft">
        {say`It is saved even when it does not agree, and stays on the closing list with its
          difference.`}
      </p>
      <LateField late={late} error={saving.errorOf('late')} />
      <div class="form-end">
        <Button kind="main" submit disabled={saving.busy}>
          {close === undefined ? say`Settle the stall` : say`Save the changes`}
        </Button>
        {close !== undefined && (
          <Button quiet onClick={props.onDone}>
            {say`Leave it as it was`}
          </Button>
        )}
      </div>
    </form>
  );
}
