import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/**
 * For a form that a button opens in place and that takes the button's place: the first field gets
 * the focus, and once the form is closed the button has it again. Without it the focus would fall
 * off the page, and a person at a keyboard would start from the top.
 *
 *   const within = useFocusBack(open === undefined ? undefined : 'Edit Ada L.');
 *   <div ref={within}>…</div>
 *
 * @param opened the words (or the label) of the button whose form is open; undefined while none is
 */
export function useFocusBack<E extends HTMLElement = HTMLDivElement>(
  opened: string | undefined,
): RefObject<E | null> {
  const within = useRef<E>(null);
  const before = useRef(opened);
  useLayoutEffect(() => {
    const was = before.current;
    before.current = opened;
    if (was === opened) return;
    const all = within.current?.querySelectorAll<HTMLElement>(
      opened === undefined ? 'button' : 'form :is(input, select, textarea)',
    );
    const found = [...(all ?? [])];
    const isIt = (button: HTMLElement) =>
      (button.getAttribute('aria-label') ?? button.textContent) === was;
    const target = opened === undefined ? (found.find(isIt) ?? found[0]) : found[0];
    target?.focus();
  }, [opened]);
  return within;
}
