import type { PoolShare } from '../../../questions/share/pool-share.ts';
import type { ShareMethod } from '../../../questions/share/share-out.ts';
import { ChoiceField, SelectField } from '../../parts/field.tsx';
import { say } from '../../say.ts';
import type { SheetTyped } from './sheet-typed.ts';

const METHODS: readonly { readonly value: ShareMethod; readonly words: string }[] = [
  { value: 'remainder', words: say`Nearest to due, carried on` },
  { value: 'divisor', words: say`Divisor rule, this pool alone` },
  { value: 'rota', words: say`One by one in turn` },
];

/** What the parts rest on and how they are rounded; the group's own rule is preset. */
export function ShareRule(props: {
  readonly pool: PoolShare;
  /** Somebody was down for a shift, so that minutes can be the weights. */
  readonly hasMinutes: boolean;
  readonly typed: SheetTyped;
  readonly onTyped: (typed: SheetTyped) => void;
}) {
  const { typed, pool } = props;
  const weights = [
    ...(props.hasMinutes ? [{ value: 'minutes', words: say`Minutes worked` }] : []),
    { value: 'even', words: say`Evenly` },
    { value: 'hand', words: say`By hand` },
  ];
  return (
    <div class="share-rule">
      <ChoiceField
        label={say`Share by`}
        name="by"
        value={typed.by}
        options={weights}
        onValue={(said) => {
          const by = said === 'minutes' || said === 'even' ? said : 'hand';
          const start = pool.sellers.map(({ seller, weight }) => [seller, String(weight)] as const);
          const byHand = by === 'hand' ? Object.fromEntries(start) : typed.byHand;
          props.onTyped({ ...typed, by, byHand });
        }}
      />
      <SelectField
        label={say`Rule for whole units`}
        name="method"
        value={typed.method}
        options={METHODS}
        onValue={(said) => {
          const method = METHODS.find(({ value }) => value === said)?.value;
          if (method !== undefined) props.onTyped({ ...typed, method });
        }}
      />
    </div>
  );
}
