import Type from 'typebox';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { type Lines, ShortId, UnitsOrNone } from '../../records/fields.ts';
import type { Finding } from '../finding.ts';
import { problemFinding, readProblem } from './read-problem.ts';

const LISTED_MOST = 1000;
const WEIGHT_MOST = 1_000_000_000;
/** Exact shares are told apart by this many parts of a unit at most. */
const PARTS_MOST = 2 ** 50;

/** A share-out as a program asks for it: units by product, sellers with their weights. */
export const ShareProblem = Type.Object({
  products: Type.Record(ShortId, UnitsOrNone, {
    additionalProperties: false,
    wanted: 'product ids with whole units, like {"honey":5}',
  }),
  sellers: Type.Array(
    Type.Object({
      seller: ShortId,
      weight: Type.Integer({
        minimum: 0,
        maximum: WEIGHT_MOST,
        wanted: `a whole number from 0 to ${WEIGHT_MOST}, like minutes worked`,
      }),
      /** Units credited so far less units due so far. */
      carried: Type.Optional(
        Type.Number({ wanted: 'units credited so far less units due so far' }),
      ),
      locked: Type.Optional(
        Type.Record(ShortId, UnitsOrNone, {
          additionalProperties: false,
          wanted: 'product ids with whole units that are fixed, like {"honey":2}',
        }),
      ),
    }),
    { minItems: 1, maxItems: LISTED_MOST, wanted: 'a list of sellers with their weights' },
  ),
  method: Type.Optional(
    Type.Union([Type.Literal('remainder'), Type.Literal('divisor'), Type.Literal('rota')], {
      wanted: 'remainder, divisor or rota',
    }),
  ),
  /** How many places of the rota earlier share-outs have used up. */
  turn: Type.Optional(UnitsOrNone),
});
export type ShareProblem = Type.Static<typeof ShareProblem>;

/** Reads a share-out problem from JSON text; the first thing that is wrong with it otherwise. */
export function readShareProblem(text: string): Outcome<ShareProblem, Finding> {
  const read = readProblem(ShareProblem, text);
  if (!read.ok) return read;
  const wrong = shareFault(read.value);
  return wrong === undefined ? done(read.value) : refused(wrong);
}

/** What a schema cannot say of a share-out problem. */
function shareFault({ products, sellers }: ShareProblem): Finding | undefined {
  const units = Object.values(products).reduce((sum, each) => sum + each, 0);
  if (units === 0) return problemFinding('products', products, 'a pool with at least one unit');
  const weights = sellers.reduce((sum, { weight }) => sum + weight, 0);
  if (weights === 0) {
    return problemFinding('sellers', 'only weights of 0', 'a weight above 0 for somebody');
  }
  if (weights * units > PARTS_MOST) {
    return problemFinding(
      'sellers',
      weights,
      'smaller weights: divide them all by the same number',
    );
  }
  const seen = new Set<string>();
  for (const [at, { seller }] of sellers.entries()) {
    if (seen.has(seller)) {
      return problemFinding(`sellers.${at}.seller`, seller, 'each seller once');
    }
    seen.add(seller);
  }
  return lockedFault(products, sellers);
}

function lockedFault(products: Lines, sellers: ShareProblem['sellers']): Finding | undefined {
  const given = new Map<string, number>();
  for (const [at, { locked = {} }] of sellers.entries()) {
    for (const [product, units] of Object.entries(locked)) {
      const field = `sellers.${at}.locked.${product}`;
      const all = Object.hasOwn(products, product) ? products[product] : undefined;
      if (all === undefined) return problemFinding(field, units, `a product of the pool`);
      const sum = (given.get(product) ?? 0) + units;
      given.set(product, sum);
      if (sum > all) {
        return problemFinding(field, units, `at most ${all} locked of ${product}, all together`);
      }
    }
  }
  return undefined;
}
