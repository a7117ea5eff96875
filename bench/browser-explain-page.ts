/** What browser-explain.ts runs inside the page: folds a book and explains, again and again. */
import { Ledger } from '../src/ledger/ledger.ts';
import { explain } from '../src/questions/explain/explain.ts';
import { type ByAccount, readObservation } from '../src/questions/explain/observation.ts';
import type { BookRecord } from '../src/records/record.ts';

export interface ExplainCase {
  readonly name: string;
  readonly records: readonly BookRecord[];
  readonly seen: ByAccount;
  readonly mistakesMax: 1 | 2 | 3;
}

export interface ExplainTime {
  readonly name: string;
  /** Milliseconds of the fastest run, preparation included, and of the first. */
  readonly fastest: number;
  readonly first: number;
  /** The answers, to be held against those given elsewhere. */
  readonly kinds: readonly string[];
}

export function timeExplain(cases: readonly ExplainCase[], runs: number): ExplainTime[] {
  return cases.map(({ name, records, seen, mistakesMax }) => {
    const book = Ledger.of(records);
    const observed = readObservation(book, seen);
    if (!observed.ok) throw new Error(observed.refusal);
    const times: number[] = [];
    let kinds: readonly string[] = [];
    for (let run = 0; run < runs; run += 1) {
      const start = performance.now();
      const { explanations } = explain(book, observed.value, { mistakesMax });
      times.push(performance.now() - start);
      kinds = explanations.map(({ kind, odds }) => `${kind} ${odds.toFixed(9)}`);
    }
    return { name, fastest: Math.min(...times), first: times[0] ?? 0, kinds };
  });
}
