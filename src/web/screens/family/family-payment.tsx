import { useState } from 'preact/hooks';
import { refused } from '../../../base/outcome.ts';
import type { FamilyAccount } from '../../../questions/family-account.ts';
import { spreadFamilyPayment } from '../../../questions/spread-payment.ts';
import { useBook } from '../../book.ts';
import { AmountField } from '../../parts/amount-field.tsx';
import { Button } from '../../parts/button.tsx';
import { LateField, useLate } from '../../parts/closed-season.tsx';
import { ChoiceField, DayField, TextField } from '../../parts/field.tsx';
import { ErrorSummary } from '../../parts/notice.tsx';
import { useSaving } from '../../parts/saving.ts';
import { say } from '../../say.ts';
import { type PaymentTyped, paymentDrafts, typedCents } from './payment-draft.ts';
import { SpreadTable } from './spread-table.tsx';

const TENDERS = [
  { value: 'cash', words: say`Cash` },
  { value: 'cheque', words: say`Cheque` },
  { value: 'card', words: say`Card` },
];

/** One payment of the whole family; how it is spread over its sellers is shown before saving. */
export function FamilyPayment({ account }: { readonly account: FamilyAccount }) {
  const book = useBook();
  const { ledger, currency } = book;
  const empty: PaymentTyped = {
    amount: '',
    tender: 'cash',
    date: book.workingDay(),
    receipt: book.nextReceipt(),
    note: '',
  };
  const [typed, setTyped] = useState(empty);
  const saving = useSaving();
  const late = useLate();
  const cents = typedCents(typed, currency);
  const spread = spreadFamilyPayment(ledger, account.family, cents);
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    const drafts = paymentDrafts(typed, spread, currency, late.field);
    const errors = [...(drafts.ok ? [] : drafts.refusal), ...late.errors];
    void saving.save(errors.length > 0 ? refused(errors) : drafts, () =>
      setTyped({ ...empty, receipt: book.nextReceipt() }),
    );
  };
  if (account.sellers.length === 0) {
    return <p class="none">{say`This family has no seller yet. Add one in set-up.`}</p>;
  }
  return (
    <form class="panel" onSubmit={save} noValidate aria-labelledby="payment">
      <h2 id="payment">{say`Payment of the family`}</h2>
      <ErrorSummary errors={saving.errors} attempt={saving.attempt} />
      <PaymentFields typed={typed} onTyped={setTyped} owed={spread.owed} errorOf={saving.errorOf} />
      {account.sellers.length > 1 && <SpreadTable spread={spread} />}
      <LateField late={late} error={saving.errorOf('late')} />
      <Button kind="main" submit disabled={saving.busy}>
        {say`Save the payment`}
      </Button>
    </form>
  );
}

function PaymentFields(props: {
  readonly typed: PaymentTyped;
  readonly onTyped: (typed: PaymentTyped) => void;
  /** Minor units that all sellers owe together, offered as one tap. */
  readonly owed: number;
  readonly errorOf: (field: string) => string | undefined;
}) {
  const { typed } = props;
  const set = (field: 'amount' | 'date' | 'receipt' | 'note') => (value: string) =>
    props.onTyped({ ...typed, [field]: value });
  return (
    <>
      <AmountField
        label={say`Amount`}
        name="amount"
        value={typed.amount}
        onValue={set('amount')}
        error={props.errorOf('amount')}
        chips={props.owed > 0 ? [{ minor: props.owed, words: say`all that is to pay` }] : []}
      />
      <ChoiceField
        label={say`Paid by`}
        name="tender"
        value={typed.tender}
        onValue={(tender) => props.onTyped({ ...typed, tender: tenderOf(tender) })}
        options={TENDERS}
      />
      <div class="side-by-side">
        <DayField
          label={say`Day`}
          name="date"
          value={typed.date}
          onValue={set('date')}
          error={props.errorOf('date')}
        />
        <TextField
          label={say`Receipt number`}
          optional
          value={typed.receipt}
          onValue={set('receipt')}
          maxLength={200}
        />
      </div>
      <TextField
        label={say`Note`}
        optional
        value={typed.note}
        onValue={set('note')}
        maxLength={500}
      />
    </>
  );
}

function tenderOf(text: string): PaymentTyped['tender'] {
  return text === 'cheque' || text === 'card' ? text : 'cash';
}
