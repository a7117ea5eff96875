import { AmountField } from '../../parts/amount-field.tsx';
import { TextField } from '../../parts/field.tsx';
import type { SettleForm } from './settle-form.ts';
import type { MoneyPart } from './stall-typed.ts';

const AMOUNTS: readonly (readonly [MoneyPart, string, string])[] = [
  ['float', 'Float', 'Cash that was in the box at the start; it is taken off again.'],
  ['cards', 'Card takings', 'The day’s total of the card reader, before fees.'],
  ['cheques', 'Cheques', 'All cheques together.'],
  ['paidout', 'Paid out of the box', 'Cash spent at the stall. It is added back to the takings.'],
];

/** Float, cards, cheques, and cash paid out with what it was for. */
export function OtherMoney(props: SettleForm) {
  const { typed } = props;
  return (
    <div>
      {AMOUNTS.map(([part, label, hint]) => (
        <AmountField
          key={part}
          label={label}
          hint={hint}
          name={part}
          value={typed[part]}
          onValue={(text) => props.onTyped({ ...typed, [part]: text })}
          error={props.errorOf(part)}
        />
      ))}
      <TextField
        label="Note"
        hint="What cash was paid out for, or what explains a difference."
        name="note"
        value={typed.note}
        onValue={(note) => props.onTyped({ ...typed, note })}
        error={props.errorOf('note')}
        maxLength={500}
        optional
      />
    </div>
  );
}
