import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';
import { say } from '../say.ts';
import { Button } from './button.tsx';

/**
 * A question that stops the rest of the page, on the browser's own dialog: Escape closes, focus
 * stays in and comes back. Prefer Undo to a question wherever a step can be taken back.
 */
export function Dialog(props: {
  readonly open: boolean;
  readonly title: string;
  readonly onClose: () => void;
  /** Words of the way out, where nothing is left behind unsaved. */
  readonly close?: string;
  readonly children: ComponentChildren;
}) {
  const box = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    if (props.open && !box.current?.open) box.current?.showModal();
    if (!props.open) box.current?.close();
  }, [props.open]);
  return (
    <dialog ref={box} aria-labelledby={id} onClose={props.onClose}>
      {props.open && (
        <>
          <h2 id={id}>{props.title}</h2>
          {props.children}
          <p class="dialog-close">
            <Button quiet onClick={props.onClose}>
              {props.close ?? say`Close without saving`}
            </Button>
          </p>
        </>
      )}
    </dialog>
  );
}
