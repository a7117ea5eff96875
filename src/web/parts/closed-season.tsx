import { useState } from 'preact/hooks';
import { useBook } from '../book.ts';
import { say } from '../say.ts';
import { TextField } from './field.tsx';
import { type FieldError, Notice } from './notice.tsx';

/** A closed season is read-only, but for records that come late and say why. */
export interface Late {
  readonly closed: boolean;
  readonly reason: string;
  readonly onReason: (reason: string) => void;
  /** The field for a record's draft; empty while the season is open. */
  readonly field: { readonly late?: string };
  readonly errors: readonly FieldError[];
}

export function useLate(): Late {
  const closed = useClosed() !== undefined;
  const [reason, onReason] = useState('');
  const said = reason.trim();
  const missing = closed && said === '';
  return {
    closed,
    reason,
    onReason,
    field: closed && said !== '' ? { late: said } : {},
    errors: missing ? [{ field: 'late', words: say`Write why this record comes late.` }] : [],
  };
}

/** When and by whom the season was closed; undefined while it is open. */
export function useClosed() {
  return useBook().ledger.setup.season?.closed;
}

/** Asks a movement form for the reason why it comes after closing; nothing while open. */
export function LateField(props: { readonly late: Late; readonly error?: string | undefined }) {
  const closed = useClosed();
  if (closed === undefined) return null;
  return (
    <div class="late">
      <p>{say`The season was closed on ${say.day(closed.date)}. This is kept as a late record.`}</p>
      <TextField
        label={say`Why it comes late`}
        name="late"
        value={props.late.reason}
        onValue={props.late.onReason}
        error={props.error}
        maxLength={500}
      />
    </div>
  );
}

/** Said instead of a form that a closed season does not have any more. */
export function ClosedNotice() {
  const closed = useClosed();
  if (closed === undefined) return null;
  return (
    <Notice title={say`The season was closed on ${say.day(closed.date)}.`}>
      <p>
        {say`Set-up and earlier records are read-only. Goods and money that turn up later are still
          recorded, with the day and the reason why they come late.`}
      </p>
    </Notice>
  );
}
