import type { Ledger } from '../../../ledger/ledger.ts';
import {
  notYetBanked,
  type Receipt,
  receiptOf,
  sumOfReceipts,
} from '../../../questions/not-yet-banked.ts';
import { isMovement } from '../../../records/record.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { fieldId } from '../../parts/field.tsx';
import { Money } from '../../parts/figures.tsx';
import { moneyToType } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import type { FormFieldProps } from './form-fields.tsx';
import type { Typed } from './form-values.ts';

/**
 * What a deposit holds: payments and stalls whose cash and cheques wait to be banked, to be ticked
 * off against the bag. Their sum is the amount until another one is written.
 */
export function ReceiptsField({ form, typed, onType }: FormFieldProps) {
  const { ledger, currency } = useBook();
  const receipts = offered(form.field, typed, ledger);
  if (receipts.length === 0) {
    return <p class="none">{say`No payment and no stall waits to be banked.`}</p>;
  }
  const ticked = receipts.filter((receipt) => isTicked(form.field, typed, receipt));
  const tick = (changed: readonly Receipt[], on: boolean) =>
    onType(withTicks({ field: form.field, typed, receipts, changed, on, currency }));
  const all = ticked.length === receipts.length;
  return (
    <fieldset class="field receipts" id={fieldId(form.field)} tabIndex={-1}>
      <legend>
        {form.label}
        <span class="field-optional"> {say`(if any)`}</span>
      </legend>
      <p class="field-hint">{say`Tick what is in the bag. Cards are not here: they arrive by
        payout.`}</p>
      <ul>
        {receipts.map((receipt) => (
          <ReceiptRow
            key={receipt.record.id}
            receipt={receipt}
            ticked={ticked.includes(receipt)}
            onTick={(on) => tick([receipt], on)}
          />
        ))}
      </ul>
      <p class="receipts-sum">
        <span aria-live="polite">
          {say`${ticked.length} of ${receipts.length} ticked`},{' '}
          <b>{say.money(sumOfReceipts(ticked), currency)}</b>
        </span>{' '}
        <Button quiet onClick={() => tick(receipts, !all)}>
          {all ? say`Tick none` : say`Tick all`}
        </Button>
      </p>
    </fieldset>
  );
}

function ReceiptRow(props: {
  readonly receipt: Receipt;
  readonly ticked: boolean;
  readonly onTick: (on: boolean) => void;
}) {
  const { ledger } = useBook();
  const { record, cents } = props.receipt;
  return (
    <li>
      <label>
        <input
          type="checkbox"
          checked={props.ticked}
          onChange={(event) => props.onTick(event.currentTarget.checked)}
        />
        <span class="receipt-words">
          {say.day(record.date)}: {recordSentence(record, ledger, say)}
        </span>
        <Money minor={cents} plain />
      </label>
    </li>
  );
}

function isTicked(field: string, typed: Typed, { record }: Receipt): boolean {
  return typed[`${field}.${record.id}`] === 'yes';
}

/** What is typed after some ticks changed; the amount follows while nobody wrote another one. */
function withTicks(change: {
  readonly field: string;
  readonly typed: Typed;
  readonly receipts: readonly Receipt[];
  readonly changed: readonly Receipt[];
  readonly on: boolean;
  readonly currency: string;
}): Typed {
  const { field, typed, receipts, currency } = change;
  const ticks = change.changed.map(({ record }) => [
    `${field}.${record.id}`,
    change.on ? 'yes' : '',
  ]);
  const next: Typed = { ...typed, ...Object.fromEntries(ticks) };
  const sumIn = (at: Typed) => {
    const ticked = receipts.filter((receipt) => isTicked(field, at, receipt));
    return ticked.length === 0 ? '' : moneyToType(sumOfReceipts(ticked), currency);
  };
  return (typed.cents ?? '') === sumIn(typed) ? { ...next, cents: sumIn(next) } : next;
}

/** What waits, and what this deposit already names, so that an edit can take it out again. */
function offered(field: string, typed: Typed, ledger: Ledger): Receipt[] {
  const waiting = notYetBanked(ledger);
  const known = new Set(waiting.map(({ record }) => record.id));
  const own: Receipt[] = [];
  for (const key of Object.keys(typed)) {
    const id = key.slice(field.length + 1);
    const record = key.startsWith(`${field}.`) && !known.has(id) && ledger.standing.get(id);
    const receipt = record && isMovement(record) ? receiptOf(record) : undefined;
    if (receipt !== undefined) own.push(receipt);
  }
  return [...own, ...waiting];
}
