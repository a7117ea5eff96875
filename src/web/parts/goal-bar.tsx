import '../styles/pictures.css';

const WIDTH = 200;

/** Have against should: how far a number has come, with a tick where it is to come to. */
export function GoalBar(props: { readonly have: number; readonly goal: number }) {
  const most = Math.max(props.have, props.goal, 1);
  const at = (units: number) => (Math.max(0, units) / most) * WIDTH;
  return (
    <svg class="bar" viewBox={`0 0 ${WIDTH} 12`} preserveAspectRatio="none" aria-hidden="true">
      <rect class="bar-track" x="0" y="0" width={WIDTH} height="12" />
      <rect class="bar-goods" x="0" y="2.5" width={at(props.have)} height="7" />
      <rect class="bar-goal" x={Math.max(0, at(props.goal) - 2)} y="0" width="2" height="12" />
    </svg>
  );
}
