import Type from 'typebox';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { ShortId } from '../../records/fields.ts';
import type { Finding } from '../finding.ts';
import { problemFinding, readProblem } from './read-problem.ts';

const SELLERS_MOST = 1000;
const STEPS_MOST = 100;
const UNITS_MOST = 1_000_000_000;
/** Places of a table that the solver writes: sellers times units of the pool. */
const LIFT_TABLE_MOST = 20_000_000;
const WORTH_DECIMALS = 6;
const WORTH_MOST = 100_000_000;

const Height = Type.Integer({
  minimum: 0,
  maximum: UNITS_MOST,
  wanted: `whole units from 0 to ${UNITS_MOST}`,
});

/** A lift as a program asks for it. */
export const LiftProblem = Type.Object({
  pool: Height,
  sellers: Type.Array(
    Type.Object({ seller: ShortId, credited: Height, goal: Type.Optional(Height) }),
    { minItems: 1, maxItems: SELLERS_MOST, wanted: 'a list of sellers with their credited units' },
  ),
  steps: Type.Array(
    Type.Object({
      units: Height,
      worth: Type.Number({ minimum: 0, wanted: 'a number of 0 or more' }),
    }),
    { maxItems: STEPS_MOST, wanted: 'a list of steps, each with units and worth' },
  ),
});
export type LiftProblem = Type.Static<typeof LiftProblem>;

/** Reads a lift problem from JSON text; the first thing that is wrong with it otherwise. */
export function readLiftProblem(text: string): Outcome<LiftProblem, Finding> {
  const read = readProblem(LiftProblem, text);
  if (!read.ok) return read;
  const wrong = liftFault(read.value);
  return wrong === undefined ? done(read.value) : refused(wrong);
}

/** What a schema cannot say of a lift problem. */
function liftFault({ pool, sellers, steps }: LiftProblem): Finding | undefined {
  if (pool === 0) return problemFinding('pool', pool, 'a pool with at least one unit');
  const seen = new Set<string>();
  for (const [at, { seller }] of sellers.entries()) {
    if (seen.has(seller)) {
      return problemFinding(`sellers.${at}.seller`, seller, 'each seller once');
    }
    seen.add(seller);
  }
  const scale = worthScale(steps.map(({ worth }) => worth));
  if (scale === undefined) {
    const wanted = `worths of at most ${WORTH_DECIMALS} decimals, together at most ${WORTH_MOST}`;
    return problemFinding('steps', 'worths that cannot be told apart exactly', wanted);
  }
  // No more of the pool than would reach every mark is ever looked at in the table.
  const places = sellers.length * Math.min(pool, unitsToEveryMark(sellers, steps));
  if (places > LIFT_TABLE_MOST) {
    const most = Math.floor(LIFT_TABLE_MOST / sellers.length);
    return problemFinding('pool', pool, `at most ${most} units for ${sellers.length} sellers`);
  }
  return undefined;
}

function unitsToEveryMark(sellers: LiftProblem['sellers'], steps: LiftProblem['steps']): number {
  const highest = steps.reduce((most, { units }) => Math.max(most, units), 0);
  return sellers.reduce(
    (sum, { credited, goal = 0 }) => sum + Math.max(0, highest - credited, goal - credited),
    0,
  );
}

/**
 * What decimal worths are multiplied by to be whole: a power of ten. Undefined where there is none
 * that keeps their sum small enough to stay exact.
 */
export function worthScale(worths: readonly number[]): number | undefined {
  for (let decimals = 0; decimals <= WORTH_DECIMALS; decimals += 1) {
    const scale = 10 ** decimals;
    const isWhole = worths.every((worth) => Number((worth * scale).toPrecision(15)) % 1 === 0);
    if (!isWhole) continue;
    const sum = worths.reduce((total, worth) => total + worth * scale, 0);
    return sum <= WORTH_MOST ? scale : undefined;
  }
  return undefined;
}
