import type { ComponentChildren } from 'preact';

/** What is wider than a narrow screen scrolls inside itself, and can be reached to be scrolled. */
export function ScrollBox(props: {
  readonly label: string;
  readonly look?: string;
  readonly children: ComponentChildren;
}) {
  return (
    <section
      class={`table-scroll scrolls ${props.look ?? ''}`}
      aria-label={props.label}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable
      tabIndex={0}
    >
      {props.children}
    </section>
  );
}
