import { useState } from 'preact/hooks';
import { done, refused } from '../../../base/outcome.ts';
import type { RecordOf } from '../../../records/record.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { clockText } from '../../../statements/stall-time-text.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { useClosed } from '../../parts/closed-season.tsx';
import { Field } from '../../parts/field.tsx';
import { ErrorSummary, type FieldError } from '../../parts/notice.tsx';
import { SellerPicker } from '../../parts/pickers.tsx';
import { useSaving } from '../../parts/saving.ts';
import { useFocusBack } from '../../parts/use-focus-back.ts';
import { say } from '../../say.ts';
import { contentOf } from '../../undo.ts';

interface ShiftTyped {
  readonly seller: string;
  readonly from: string;
  readonly to: string;
}

/** Who works at the stall and when; edited in place. */
export function Shifts({ stall }: { readonly stall: RecordOf<'stall'> }) {
  const { ledger } = useBook();
  const closed = useClosed();
  const [editing, setEditing] = useState(false);
  const words = stall.shifts.length === 0 ? say`Add shifts` : say`Edit shifts`;
  const within = useFocusBack<HTMLElement>(editing ? words : undefined);
  return (
    <section aria-labelledby="shifts" ref={within}>
      <h2 id="shifts">{say`Shifts`}</h2>
      {editing ? (
        <ShiftsForm stall={stall} onDone={() => setEditing(false)} />
      ) : (
        <>
          {stall.shifts.length === 0 && (
            <p class="none">{say`Nobody is down for this stall yet.`}</p>
          )}
          <ul class="shift-list">
            {stall.shifts.map((shift) => (
              <li key={`${shift.seller} ${shift.from}`}>
                {sellerName(ledger.setup, shift.seller)}{' '}
                <span class="soft">{say`${clockText(shift.from)} to ${clockText(shift.to)}`}</span>
              </li>
            ))}
          </ul>
          {closed === undefined && <Button onClick={() => setEditing(true)}>{words}</Button>}
        </>
      )}
    </section>
  );
}

function ShiftsForm(props: { readonly stall: RecordOf<'stall'>; readonly onDone: () => void }) {
  const { stall } = props;
  const next: ShiftTyped = {
    seller: '',
    from: clockText(stall.starts),
    to: clockText(stall.ends),
  };
  const [rows, setRows] = useState<readonly ShiftTyped[]>(() => {
    const kept = stall.shifts.map(({ seller, from, to }) => ({
      seller,
      from: clockText(from),
      to: clockText(to),
    }));
    return [...kept, next];
  });
  const saving = useSaving();
  const set = (place: number, row: ShiftTyped) =>
    setRows(rows.map((kept, at) => (at === place ? row : kept)));
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    void saving.save(checkedShifts(stall, rows), props.onDone);
  };
  return (
    <form onSubmit={save} noValidate>
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      {rows.map((row, place) => (
        <div class="shift-row" key={`shift-${place + 1}`}>
          <SellerPicker
            label={say`Seller ${place + 1}`}
            name={`shift.${place}`}
            value={row.seller}
            onValue={(seller) => set(place, { ...row, seller })}
            error={saving.errorOf(`shift.${place}`)}
            none={say`Nobody`}
          />
          <Clock
            label={say`From`}
            value={row.from}
            onValue={(from) => set(place, { ...row, from })}
          />
          <Clock label={say`To`} value={row.to} onValue={(to) => set(place, { ...row, to })} />
        </div>
      ))}
      <Button onClick={() => setRows([...rows, next])}>{say`Another shift`}</Button>
      <div class="form-end">
        <Button kind="main" submit disabled={saving.busy}>
          {say`Save the shifts`}
        </Button>
        <Button quiet onClick={props.onDone}>
          {say`Leave them as they were`}
        </Button>
      </div>
    </form>
  );
}

function Clock(props: {
  readonly label: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
}) {
  return (
    <Field
      label={props.label}
      control={(control) => (
        <input
          {...control}
          type="time"
          value={props.value}
          onInput={(event) => props.onValue(event.currentTarget.value)}
        />
      )}
    />
  );
}

/** The stall with these shifts; a row without a seller is left out. */
function checkedShifts(stall: RecordOf<'stall'>, rows: readonly ShiftTyped[]) {
  const errors: FieldError[] = [];
  rows.forEach((row, place) => {
    if (row.seller === '') return;
    if (row.from === '' || row.to === '' || row.to <= row.from) {
      errors.push({
        field: `shift.${place}`,
        words: say`Seller ${place + 1}: the shift ends before it starts. Write both times.`,
      });
    }
  });
  if (errors.length > 0) return refused(errors);
  const shifts = rows
    .filter((row) => row.seller !== '')
    .map(({ seller, from, to }) => ({ seller, from, to }));
  const { host, starts, ends, stall: id } = stall;
  return done([
    { ...contentOf(stall), kind: 'stall' as const, stall: id, host, starts, ends, shifts },
  ]);
}
