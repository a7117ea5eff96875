/**
 * Where something stands, by shape and word together: done ✓ in plain ink, open ▲ with its word in
 * bold, not needed a dash. Done carries no colour, so that what is open stands out.
 */
export type Mark = 'done' | 'open' | 'not-needed' | 'ahead';

const SHAPES: Readonly<Record<Mark, string>> = {
  done: '✓',
  open: '▲',
  'not-needed': '–',
  ahead: '○',
};

export function StateMark(props: { readonly mark: Mark; readonly word: string }) {
  return (
    <span class={`state-mark state-${props.mark}`}>
      <span class="state-shape" aria-hidden="true">
        {SHAPES[props.mark]}
      </span>{' '}
      {props.word}
    </span>
  );
}
