import { canonicalText } from '../../src/base/canonical-text.ts';
import { uuid7 } from '../../src/base/id.ts';
import { type Seeded, seeded } from '../../src/base/seeded.ts';
import { Ledger } from '../../src/ledger/ledger.ts';
import { type Edit, recordsOfEdits } from '../../src/questions/explain/edits.ts';
import { type Explained, explain } from '../../src/questions/explain/explain.ts';
import { type ObservedAccount, readObservation } from '../../src/questions/explain/observation.ts';
import type { BookRecord } from '../../src/records/record.ts';
import { type Level, levels, observationOf } from './observe.ts';
import { type Plant, plants } from './plant.ts';
import { trueSeason } from './true-season.ts';

/** How explain did on one planted mistake at one level. */
export interface Outcome {
  readonly sort: string;
  readonly seed: number;
  readonly level: Level;
  readonly told: string;
  /** Place of the first explanation that restores the true book, from 1; 0 where none does. */
  readonly place: number;
  /** Odds of all explanations that come to the same balances as the first one. */
  readonly said: number;
  /** False where the observation shows only one of two mistakes: nobody could find the other. */
  readonly isShown: boolean;
  readonly explained: Explained;
  readonly observed: readonly ObservedAccount[];
  /** The book with the mistake in it. */
  readonly book: Ledger;
}

/** Plants one mistake of each sort in a season and asks for explanations at each level. */
export function* measureSingles(
  seed: number,
  sorts = Object.keys(plants),
  records: readonly BookRecord[] = trueSeason(seed),
): Generator<Outcome> {
  const truth = Ledger.of(records);
  for (const [at, sort] of sorts.entries()) {
    const plant = plants[sort];
    const planted = plant?.(records, seeded(seed * 1000 + at));
    if (planted === undefined) continue;
    yield* outcomes(truth, planted.records, { sort, seed, told: planted.told });
  }
}

/** Two mistakes of different sorts at once. */
export function* measurePairs(seed: number, howMany: number): Generator<Outcome> {
  const records = trueSeason(seed);
  const truth = Ledger.of(records);
  const random = seeded(seed * 77 + 5);
  const all = Object.entries(plants);
  for (let each = 0; each < howMany; each += 1) {
    const [[one, first], [two, second]] = [random.pick(all), random.pick(all)];
    const planted = plantBoth(records, first, second, seeded(seed * 31 + each));
    if (planted === undefined) continue;
    const about = { sort: TWO, seed, told: `${one}; ${two}` };
    yield* outcomes(truth, planted.records, about, Ledger.of(planted.between));
  }
}

export const TWO = 'two at once';

function plantBoth(records: readonly BookRecord[], a: Plant, b: Plant, random: Seeded) {
  const first = a(records, random);
  const both = first === undefined ? undefined : b(first.records, random);
  if (first === undefined || both === undefined) return undefined;
  return { records: both.records, between: first.records };
}

/** @param between the book with only the first of two mistakes in it */
function* outcomes(
  truth: Ledger,
  records: readonly BookRecord[],
  about: { readonly sort: string; readonly seed: number; readonly told: string },
  between?: Ledger,
): Generator<Outcome> {
  const book = Ledger.of(records);
  for (const level of levels) {
    const observed = readObservation(book, observationOf(truth, book, level));
    if (!observed.ok) throw new Error(observed.refusal);
    const explained = explain(book, observed.value);
    if (Object.keys(explained.difference).length === 0) continue;
    const isShown =
      between === undefined ||
      (showsIn(observed.value, truth, between) && showsIn(observed.value, between, book));
    const mended = explained.explanations.map(({ edits }) => balancesWith(book, edits));
    const place = 1 + mended.indexOf(canonicalText(truth.balances.toAccounts()));
    const alike = explained.explanations.filter((_, at) => mended[at] === mended[0]);
    const said = alike.reduce((sum, { odds }) => sum + odds, 0);
    const found = { observed: observed.value, explained, isShown, said, place };
    yield { ...about, level, book, ...found };
  }
}

/** True where two books differ in what was looked at. */
function showsIn(observed: readonly ObservedAccount[], one: Ledger, other: Ledger): boolean {
  return observed.some(({ ledger, account }) => {
    if (ledger === 'money')
      return one.balances.moneyOf(account) !== other.balances.moneyOf(account);
    const [a, b] = [one, other].map((each) => each.balances.linesOf(ledger, account));
    return JSON.stringify(a) !== JSON.stringify(b);
  });
}

/** All balances of the book with edits written into it, as text. */
function balancesWith(book: Ledger, edits: readonly Edit[]): string {
  let written = 0;
  const mends = recordsOfEdits(edits, book, () => {
    written += 1;
    const ms = Date.UTC(2027, 11, 1) + written;
    const id = uuid7(ms, new Uint8Array(10));
    return { id, at: new Date(ms).toISOString(), by: 'auditor' };
  });
  const mended = Ledger.of([...book.standing.records(), ...mends]);
  return canonicalText(mended.balances.toAccounts());
}
