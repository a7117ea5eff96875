import { AmountField } from '../../parts/amount-field.tsx';
import { TextField } from '../../parts/field.tsx';
import { say } from '../../say.ts';
import type { SettleForm } from './settle-form.ts';
import type { MoneyPart } from './stall-typed.ts';

const AMOUNTS: readonly (readonly [MoneyPart, string, string])[] = [
  ['float', say`Float`, say`Cash that was in the box at the start; it is taken off again.`],
  ['cards', say`Card takings`, say`The day’s total of the card reader, before fees.`],
  ['cheques', say`Cheques`, say`All cheques together.`],
  [
    'paidout',
    say`Paid out of the box`,
    say`Cash spent at the stall. It is added back to the takings.`,
  ],
];

/** Float, cards, cheques, and cash paid out with what it was for. */
export function OtherMoney(props: SettleForm & { readonly withoutFloat?: boolean }) {
  const { typed } = props;
  return (
    <div>
      {AMOUNTS.slice(props.withoutFloat ? 1 : 0).map(([part, label, hint]) => (
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
        label={say`Note`}
        hint={say`What cash was paid out for, or what explains a difference.`}
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
