import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { say } from '../say.ts';
import { fieldId } from './field.tsx';

/**
 * A box that says something: `told` (plain), `stop` (must act: octagon and thick border), `done`
 * (✓ in plain ink). Say what to do next in it.
 */
export function Notice(props: {
  readonly tone?: 'told' | 'stop' | 'done';
  readonly title?: string;
  readonly children?: ComponentChildren;
}) {
  const tone = props.tone ?? 'told';
  return (
    <div class={`notice notice-${tone}`}>
      {tone === 'stop' && <Octagon />}
      <div>
        {props.title && <p class="notice-title">{props.title}</p>}
        {props.children}
      </div>
    </div>
  );
}

export function Octagon() {
  return (
    <svg
      class="octagon"
      viewBox="0 0 20 20"
      width="20"
      height="20"
      role="img"
      aria-label={say`Stop`}
    >
      <path d="M6 1h8l5 5v8l-5 5H6l-5-5V6z" />
      <path class="octagon-mark" d="M10 5v6M10 13.5v1.5" />
    </svg>
  );
}

/** One thing that does not fit: the field it belongs to (empty for the whole) and the words. */
export interface FieldError {
  readonly field: string;
  readonly words: string;
}

/**
 * The list of what does not fit, on top of a form. It takes the focus when it appears or changes
 * (`attempt` counts the tries to save) and links to the fields.
 */
export function ErrorSummary(props: {
  readonly errors: readonly FieldError[];
  readonly attempt: number;
}) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (props.attempt > 0) box.current?.focus();
  }, [props.attempt]);
  if (props.errors.length === 0) return null;
  return (
    <div class="notice notice-stop" ref={box} tabIndex={-1} role="alert">
      <Octagon />
      <div>
        <p class="notice-title">{say`Not saved yet. What you typed is still here.`}</p>
        <ul>
          {props.errors.map((error) => (
            <li key={`${error.field} ${error.words}`}>
              {error.field === '' ? (
                error.words
              ) : (
                <a href={`#${fieldId(error.field)}`}>{error.words}</a>
              )}
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}
