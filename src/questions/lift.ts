import { raiseProgramme } from '../solvers/raise/raise-programme.ts';
import { raiseToSteps, type ToRaise } from '../solvers/raise/raise-to-steps.ts';

/** A pool's units given where they reach most goals and the worthiest prize steps. */
export interface LiftInput {
  /** Whole units, at least 1; all are given. */
  readonly pool: number;
  /** In the order that settles ties; at least one. */
  readonly sellers: readonly LiftSeller[];
  readonly steps: readonly LiftStep[];
  /** What worths are multiplied by to be whole numbers (intake/problems/lift-problem.ts). */
  readonly worthScale?: number | undefined;
}

export interface LiftSeller {
  readonly seller: string;
  /** Credited units so far. */
  readonly credited: number;
  /** Units that the seller wants to reach. */
  readonly goal?: number | undefined;
}

export interface LiftStep {
  /** Credited units that earn it. */
  readonly units: number;
  /** What reaching it is worth to the group, against other steps; never an amount of money. */
  readonly worth: number;
}

export interface Lifted {
  /** Whole units by seller; 0 for those who get none. */
  readonly give: Readonly<Record<string, number>>;
  /** Sellers who stand at or above their goal, those who did before among them. */
  readonly goalsReached: number;
  /** Worth of all steps that all sellers stand at or above. */
  readonly worth: number;
  /** Always 0: the whole pool is given. */
  readonly left: number;
}

export function lift(input: LiftInput): Lifted {
  const { sellers, worthScale = 1 } = input;
  const raised = raiseToSteps(problemOf(input));
  const give = sellers.map(({ seller }, at): [string, number] => [seller, raised.give[at] ?? 0]);
  return {
    give: Object.fromEntries(give),
    goalsReached: raised.goals,
    worth: raised.worth / worthScale,
    left: 0,
  };
}

/** The same question as an integer programme, for another solver (see raise-programme.ts). */
export function liftProgramme(input: LiftInput): string {
  return raiseProgramme(problemOf(input));
}

function problemOf({ pool, sellers, steps, worthScale = 1 }: LiftInput): ToRaise {
  return {
    pool,
    members: sellers.map(({ credited, goal }) =>
      goal === undefined ? { height: credited } : { height: credited, goal },
    ),
    steps: steps.map(({ units, worth }) => ({
      height: units,
      worth: Math.round(worth * worthScale),
    })),
  };
}
