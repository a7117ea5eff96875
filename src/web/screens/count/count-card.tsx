import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { RecordOf } from '../../../records/record.ts';
import { useBook } from '../../book.ts';
import { Button } from '../../parts/button.tsx';
import { StopSale } from '../../parts/stop-sale.tsx';
import { caseUnits } from '../../parts/typed.ts';
import { say } from '../../say.ts';
import type { CountTyped } from './count-typed.ts';

/**
 * One product to count: big fields for cases and singles. Enter goes from the cases to the singles
 * and on to the next product, so that a whole shelf is counted without leaving the digits.
 */
export function CountCard(props: {
  readonly product: RecordOf<'product'>;
  readonly place: number;
  readonly of: number;
  readonly typed: CountTyped;
  readonly onTyped: (typed: CountTyped) => void;
  /** Next was tapped with both fields empty. */
  readonly asked: boolean;
  readonly onNext: () => void;
  readonly onBack: (() => void) | undefined;
  readonly onLeaveOut: () => void;
}) {
  const { ledger } = useBook();
  const { product, typed, asked } = props;
  const first = useRef<HTMLInputElement>(null);
  const singles = useRef<HTMLInputElement>(null);
  // Before the next key can arrive: a quick hand types on without looking.
  useLayoutEffect(() => {
    // The first product is not focused on arrival: a screen reader reads the page's title first.
    if (props.place > 1) (first.current ?? singles.current)?.focus();
  }, [props.place]);
  const size = caseUnits(ledger, product.product, typed.date);
  const value = typed.lines[product.product] ?? { cases: '', singles: '' };
  const set = (which: 'cases' | 'singles', text: string) =>
    props.onTyped({
      ...typed,
      lines: { ...typed.lines, [product.product]: { ...value, [which]: text } },
    });
  return (
    <form
      class="count-card"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        props.onNext();
      }}
    >
      <p class="count-place">
        {say`${props.place} of ${props.of}`}
        {product.storage !== undefined && ` · ${product.storage}`}
      </p>
      <h2 class="count-name">{product.name}</h2>
      <StopSale product={product.product} />
      <div class="count-fields">
        {size > 1 && (
          <CountField
            label={say`Full cases of ${size}`}
            field={first}
            value={value.cases}
            onValue={(text) => set('cases', text)}
            onEnter={() => singles.current?.focus()}
          />
        )}
        <CountField
          label={say`Singles`}
          field={singles}
          value={value.singles}
          onValue={(text) => set('singles', text)}
        />
      </div>
      <p class="error-text" role="status">
        {asked ? say`Write 0 if there is none, or leave it out.` : ''}
      </p>
      <div class="count-verbs">
        {props.onBack && (
          <Button onClick={props.onBack}>{say.as('to the one before')`Back`}</Button>
        )}
        <Button onClick={props.onLeaveOut}>{say`Leave it out`}</Button>
        <Button kind="main" submit>
          {say`Next`}
        </Button>
      </div>
    </form>
  );
}

function CountField(props: {
  readonly label: string;
  readonly field: RefObject<HTMLInputElement | null>;
  readonly value: string;
  readonly onValue: (text: string) => void;
  /** What Enter does here; without it, it goes on to the next product. */
  readonly onEnter?: () => void;
}) {
  return (
    <label>
      <span>{props.label}</span>
      <input
        ref={props.field}
        type="text"
        inputMode="numeric"
        enterkeyhint="next"
        autocomplete="off"
        class="number big"
        value={props.value}
        onInput={(event) => props.onValue(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' || props.onEnter === undefined) return;
          event.preventDefault();
          props.onEnter();
        }}
      />
    </label>
  );
}
