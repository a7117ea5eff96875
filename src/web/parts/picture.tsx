import '../styles/pictures.css';
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import { say } from '../say.ts';

/**
 * Figures drawn. Its name states the main number and is what a screen reader says first; the
 * drawing itself is for the eye, and the same figures stand behind it in a table that opens.
 *
 *   <Picture name="31 units now, 96 delivered" table={<Table … />}><WeekColumns … /></Picture>
 */
export function Picture(props: {
  readonly name: ComponentChildren;
  readonly about?: 'goods' | 'money';
  /** Left out where the page has the same table already, or the drawing is a list of words. */
  readonly table?: ComponentChildren;
  readonly children: ComponentChildren;
}) {
  const id = useId();
  return (
    <figure class={`picture picture-${props.about ?? 'plain'}`} aria-labelledby={id}>
      <figcaption id={id}>{props.name}</figcaption>
      {props.children}
      {props.table !== undefined && (
        <details class="picture-table">
          <summary>{say`The same as a table`}</summary>
          {props.table}
        </details>
      )}
    </figure>
  );
}
