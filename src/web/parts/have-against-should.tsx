import { say } from '../say.ts';
import '../styles/pictures.css';
import { useBook } from '../book.ts';
import { DifferenceStrip } from './difference-strip.tsx';
import { Difference } from './figures.tsx';

/**
 * Two bars of one scale, what should be there and what is, and under them the difference on a strip
 * around zero. The same figures stand beside the bars as text; the drawing is for the eye alone.
 */
export function HaveAgainstShould(props: {
  /** Minor units. */
  readonly should: number;
  readonly have: number;
  readonly difference: number;
}) {
  const { currency } = useBook();
  const { should, have, difference } = props;
  const most = Math.max(should, have, 1);
  return (
    <div class="have-should">
      <dl>
        <div>
          <dt>{say`Should have`}</dt>
          <dd>{say.money(should, currency)}</dd>
          <Bar part={should} of={most} look="bar-should" />
        </div>
        <div>
          <dt>{say`Have`}</dt>
          <dd>{say.money(have, currency)}</dd>
          <Bar part={have} of={most} look="bar-have" />
        </div>
        <div class="have-difference">
          <dt>{say`Difference`}</dt>
          <dd>
            <Difference amount={difference} of="money" />
          </dd>
          <DifferenceStrip difference={difference} of={most} />
        </div>
      </dl>
    </div>
  );
}

const WIDTH = 200;

function Bar(props: { readonly part: number; readonly of: number; readonly look: string }) {
  const width = Math.max(0, (props.part / props.of) * WIDTH);
  return (
    <svg class="bar" viewBox={`0 0 ${WIDTH} 12`} preserveAspectRatio="none" aria-hidden="true">
      <rect class="bar-track" x="0" y="0" width={WIDTH} height="12" />
      <rect class={props.look} x="0" y="0" width={width} height="12" />
    </svg>
  );
}
