import { byText } from '../base/order.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { levelsUp } from './prizes.ts';

/**
 * What one seller has sold against the goal it chose, in units of credit. It is for the seller and
 * the family alone: never a list of all sellers, never an order among them.
 */
export interface SoldAgainstGoal {
  readonly seller: string;
  /** First name and initial. */
  readonly name: string;
  /** Units of credit so far, all products together; below 0 where more came back than went out. */
  readonly sold: number;
  /** Units; undefined where the seller chose none. */
  readonly goal?: number;
  /** Units up to the goal; 0 where it is reached. */
  readonly toGoal?: number;
  /** The next prize step that is not reached yet, and the units up to it. */
  readonly next?: { readonly level: string; readonly units: number; readonly left: number };
}

/** Every seller of a family that sells or has sold, by name. */
export function soldAgainstGoal(ledger: Ledger, family: string): SoldAgainstGoal[] {
  const levels = levelsUp(ledger);
  return [...ledger.setup.sellers.values()]
    .filter((seller) => seller.family === family)
    .map(({ seller, name, goal, active }) => {
      const sold = ledger.balances.unitsOf('credit', `seller:${seller}`);
      const step = levels.find(({ units }) => units > sold);
      return {
        active,
        answer: {
          seller,
          name,
          sold,
          ...(goal === undefined ? {} : { goal, toGoal: Math.max(0, goal - sold) }),
          ...(step && {
            next: { level: step.level, units: step.units, left: step.units - sold },
          }),
        },
      };
    })
    .filter(({ active, answer }) => active || answer.sold !== 0)
    .map(({ answer }) => answer)
    .sort((a, b) => byText(a.name, b.name) || byText(a.seller, b.seller));
}
