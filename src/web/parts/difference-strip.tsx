import '../styles/pictures.css';

const WIDTH = 200;
const LEAST = 3;

/**
 * One difference on a strip around zero: short runs to the left, over to the right, and a small one
 * still shows. The words beside it say the same; the drawing is for the eye alone.
 */
export function DifferenceStrip(props: {
  /** Below 0 is short, above is over. */
  readonly difference: number;
  /** What half the strip stands for, in the same measure. */
  readonly of: number;
}) {
  const half = WIDTH / 2;
  const share = Math.min(1, Math.abs(props.difference) / Math.max(1, props.of));
  const width = props.difference === 0 ? 0 : Math.max(LEAST, share * half);
  return (
    <svg class="bar" viewBox={`0 0 ${WIDTH} 12`} preserveAspectRatio="none" aria-hidden="true">
      <rect class="bar-track" x="0" y="0" width={WIDTH} height="12" />
      <rect
        class="bar-difference"
        x={props.difference < 0 ? half - width : half}
        y="0"
        width={width}
        height="12"
      />
      <rect class="bar-zero" x={half - 0.75} y="0" width="1.5" height="12" />
    </svg>
  );
}
