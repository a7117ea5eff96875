import { liftAllowed } from '../../../questions/share/lift-allowed.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';

/** The way to the lift of a pool; nothing where the group did not choose lifts in time. */
export function LiftLink({ pool }: { readonly pool: string }) {
  const { ledger } = useBook();
  if (!liftAllowed(ledger).allowed) return null;
  return (
    <p>
      <a class="button button-plain" href={`/pools/${encodeURIComponent(pool)}/lift`}>
        {say`Lift to goals and prize steps instead`}
      </a>
    </p>
  );
}
