import { isDay } from '../../../base/day.ts';
import { done, type Outcome, refused } from '../../../base/outcome.ts';
import type { PaymentSpread } from '../../../questions/spread-payment.ts';
import type { Draft } from '../../book.ts';
import type { FieldError } from '../../parts/notice.tsx';
import { typedMoney } from '../../parts/typed.ts';
import { say } from '../../say.ts';

/** What the family payment form says. */
export interface PaymentTyped {
  readonly amount: string;
  readonly tender: 'cash' | 'cheque' | 'card';
  readonly date: string;
  readonly receipt: string;
  readonly note: string;
}

/** Minor units typed so far; 0 while they are no amount yet. */
export function typedCents(typed: PaymentTyped, currency: string): number {
  const cents = typedMoney(typed.amount, currency);
  return cents.ok ? cents.value : 0;
}

/** One payment record for each seller with a share, all with the same receipt number. */
export function paymentDrafts(
  typed: PaymentTyped,
  spread: PaymentSpread,
  currency: string,
  late: { readonly late?: string },
): Outcome<Draft<'payment'>[], FieldError[]> {
  const errors: FieldError[] = [];
  const cents = typedMoney(typed.amount, currency);
  if (!cents.ok) errors.push({ field: 'amount', words: cents.refusal });
  else if (cents.value === 0) errors.push({ field: 'amount', words: say`Write what was paid.` });
  if (!isDay(typed.date))
    errors.push({ field: 'date', words: say`Choose the day of the payment.` });
  if (errors.length > 0) return refused(errors);
  const receipt = typed.receipt.trim();
  const note = typed.note.trim();
  const shares = spread.shares.filter((share) => share.cents > 0);
  return done(
    shares.map((share) => ({
      kind: 'payment',
      date: typed.date,
      seller: share.seller,
      tender: typed.tender,
      cents: share.cents,
      ...(receipt === '' ? {} : { receipt }),
      ...(note === '' ? {} : { note }),
      ...late,
    })),
  );
}
