import { useBook } from '../book.ts';
import { say } from '../say.ts';

/**
 * Numbers with their meaning in shape, word and colour together: goods ■ units, money ● amount,
 * difference ▲ short or over. `to` opens the records behind the number. Sums come from questions;
 * these only show them.
 */

interface Behind {
  /** A page with the records behind the number. */
  readonly to?: string | undefined;
  /** Without the shape, inside a table column or a sentence that already says what it is. */
  readonly plain?: boolean;
}

export function Units(props: Behind & { readonly units: number; readonly words?: string }) {
  const words = props.words ?? say.count(props.units)`# unit|# units`;
  return (
    <Behind to={props.to} class={props.plain ? 'figure' : 'figure figure-goods'}>
      {!props.plain && <span class="shape shape-goods" aria-hidden="true" />}
      {props.plain ? say.units(props.units) : words}
    </Behind>
  );
}

/** An amount of money in minor units of the season's currency. */
export function Money(props: Behind & { readonly minor: number }) {
  const { currency } = useBook();
  return (
    <Behind to={props.to} class={props.plain ? 'figure' : 'figure figure-money'}>
      {!props.plain && <span class="shape shape-money" aria-hidden="true" />}
      {say.money(props.minor, currency)}
    </Behind>
  );
}

/**
 * A difference in words: `2 short`, `$3.50 over`, `agrees`. Positive is over, negative is short,
 * zero agrees.
 */
export function Difference(
  props: Behind & { readonly amount: number; readonly of: 'units' | 'money' },
) {
  const { currency } = useBook();
  if (props.amount === 0) return <span class="figure figure-agrees">{say`✓ agrees`}</span>;
  const size = Math.abs(props.amount);
  const text = props.of === 'money' ? say.money(size, currency) : say.units(size);
  return (
    <Behind to={props.to} class="figure figure-difference">
      <span class="shape shape-difference" aria-hidden="true">
        ▲
      </span>
      {props.amount < 0 ? say`${text} short` : say`${text} over`}
    </Behind>
  );
}

function Behind(props: {
  readonly to: string | undefined;
  readonly class: string;
  readonly children: preact.ComponentChildren;
}) {
  return props.to === undefined ? (
    <span class={props.class}>{props.children}</span>
  ) : (
    <a class={props.class} href={props.to}>
      {props.children}
    </a>
  );
}
