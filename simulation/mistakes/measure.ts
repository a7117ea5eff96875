import { canonicalText } from '../../src/base/canonical-text.ts';
import { uuid7 } from '../../src/base/id.ts';
import { seeded } from '../../src/base/seeded.ts';
import { Ledger } from '../../src/ledger/ledger.ts';
import { recordsOfEdits } from '../../src/questions/explain/edits.ts';
import { type Explained, explain } from '../../src/questions/explain/explain.ts';
import { readObservation } from '../../src/questions/explain/observation.ts';
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
  readonly explained: Explained;
  /** The book with the mistake in it. */
  readonly book: Ledger;
}

/** Plants one mistake of each sort in a season and asks for explanations at each level. */
export function* measureSingles(seed: number, sorts = Object.keys(plants)): Generator<Outcome> {
  const records = trueSeason(seed);
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
    yield* outcomes(truth, planted.records, { sort: 'two at once', seed, told: `${one}; ${two}` });
  }
}

function plantBoth(
  records: readonly BookRecord[],
  a: Plant,
  b: Plant,
  random: ReturnType<typeof seeded>,
) {
  const first = a(records, random);
  return first === undefined ? undefined : b(first.records, random);
}

function* outcomes(
  truth: Ledger,
  records: readonly BookRecord[],
  about: { readonly sort: string; readonly seed: number; readonly told: string },
): Generator<Outcome> {
  const book = Ledger.of(records);
  for (const level of levels) {
    const observed = readObservation(book, observationOf(truth, book, level));
    if (!observed.ok) throw new Error(observed.refusal);
    const explained = explain(book, observed.value);
    if (Object.keys(explained.difference).length === 0) continue;
    yield { ...about, level, book, explained, place: placeOfTruth(truth, records, explained) };
  }
}

/** Which explanation gives the true book's balances, all of them. */
function placeOfTruth(
  truth: Ledger,
  records: readonly BookRecord[],
  { explanations }: Explained,
): number {
  const wanted = canonicalText(truth.balances.toAccounts());
  const book = Ledger.of(records);
  const place = explanations.findIndex(({ edits }) => {
    let written = 0;
    const mends = recordsOfEdits(edits, book, () => {
      written += 1;
      const ms = Date.UTC(2027, 11, 1) + written;
      const id = uuid7(ms, new Uint8Array(10));
      return { id, at: new Date(ms).toISOString(), by: 'auditor' };
    });
    const mended = Ledger.of([...records, ...mends]);
    return canonicalText(mended.balances.toAccounts()) === wanted;
  });
  return place + 1;
}
