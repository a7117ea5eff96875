import type { ComponentChildren } from 'preact';
import { say } from '../say.ts';

/**
 * A button that does something here (a link goes somewhere). `kind="main"` for the one thing a page
 * is for, `quiet` for small verbs in rows. `submit` makes it the form's own.
 */
export function Button(props: {
  readonly children: ComponentChildren;
  readonly onClick?: () => unknown;
  readonly kind?: 'main' | 'plain' | 'stop';
  readonly quiet?: boolean;
  readonly submit?: boolean;
  readonly disabled?: boolean;
  /** Says more than the visible word, for a row of equal buttons: "Undo: Goods out to Ada L.". */
  readonly label?: string;
}) {
  const look = props.quiet ? 'button-quiet' : `button button-${props.kind ?? 'plain'}`;
  return (
    <button
      type={props.submit ? 'submit' : 'button'}
      class={look}
      disabled={props.disabled ?? false}
      aria-label={props.label}
      onClick={() => props.onClick?.()}
    >
      {props.children}
    </button>
  );
}

/** Prints this page with the print style sheet. */
export function PrintButton({ children = say`Print` }: { readonly children?: ComponentChildren }) {
  return <Button onClick={() => print()}>{children}</Button>;
}
