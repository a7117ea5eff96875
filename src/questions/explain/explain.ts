import { assert } from '../../base/assert.ts';
import { byText } from '../../base/order.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import { GapIndex } from '../../solvers/gap/gap-index.ts';
import { Adding } from './adding.ts';
import { editsOfAll } from './combine.ts';
import { type Look, lookThatDecides } from './decide.ts';
import type { Edit } from './edits.ts';
import type { Sort } from './error-model.ts';
import { Evidence } from './evidence.ts';
import { Habits } from './habits.ts';
import type { Hypothesis, Taking } from './hypothesis.ts';
import { MendCheck } from './mend-check.ts';
import { missingGoods } from './missing-goods.ts';
import { missingMoney } from './missing-money.ts';
import { differenceOf, type ObservedAccount } from './observation.ts';
import { otherwise } from './otherwise.ts';
import { Situation } from './situation.ts';
import { TakingOfStalls, TakingParts, TakingWhole } from './taking.ts';
import { tooMany } from './too-many.ts';
import { wrongNames } from './wrong-names.ts';
import { wrongNumbers } from './wrong-numbers.ts';
import { wrongWays } from './wrong-ways.ts';

/** What may have gone wrong, and what puts it right. */
export interface Explanation {
  readonly edits: readonly Edit[];
  /** Chance among all that is listed and everything that is not, from 0 to 1. */
  readonly odds: number;
  readonly kind: Sort | 'two-mistakes' | 'three-mistakes';
  /** The mistakes behind the edits: one, or two or three that were made at once. */
  readonly mistakes: readonly Hypothesis[];
}

export interface Explained {
  /** Observed less book, in the shape of the observation; empty where all agrees. */
  readonly difference: Readonly<Record<string, number | Readonly<Record<string, number>>>>;
  /** Best first; equal odds are ties. Each accounts for the whole difference. */
  readonly explanations: readonly Explanation[];
  /** True where no single mistake explains the difference. */
  readonly unexplained: boolean;
  /** The one further look that would tell most; missing where there is nothing to tell apart. */
  readonly decides?: Look;
}

export interface ExplainOptions {
  /** The day of the observation; without it, balances of the whole book. */
  readonly day?: string | undefined;
  /** How many mistakes at once are looked for, at most. */
  readonly mistakesMax?: 1 | 2 | 3;
  /** Where what is short and over was looked at: the stalls of which it was, alone. */
  readonly stalls?: readonly string[];
}

const LISTED_MAX = 10;
/** Combinations of effects that are weighed, those of the most common mistakes first. */
const COMBINATIONS_MAX = 1500;
const TRIPLES_MAX = 20_000;
/** Mistakes of one effect that are combined with those of another. */
const EACH_MAX = 6;

/**
 * Explains why balances that somebody saw are not those of the book: single mistakes, and where
 * none explains the whole difference, two or three at once. Nothing is asserted: odds say how
 * likely each is, and what leaves a remainder is never listed.
 */
export function explain(
  ledger: Ledger,
  observed: readonly ObservedAccount[],
  options: ExplainOptions = {},
): Explained {
  const { day, mistakesMax = 3 } = options;
  const balances = day === undefined ? ledger.balances : ledger.asOf(day);
  const difference = differenceOf(observed, balances);
  const situation = new Situation(ledger, observed, day);
  if (situation.agrees) return { difference, explanations: [], unexplained: false };
  const search = new Search(situation, options.stalls ?? []);
  const check = new MendCheck(ledger, observed, day);
  const explanations = explanationsOf(search, otherwise(situation), check, mistakesMax);
  const unexplained = !explanations.some(({ mistakes }) => mistakes.length === 1);
  const decides = lookThatDecides(situation, search.evidence, explanations);
  return { difference, explanations, unexplained, ...(decides === undefined ? {} : { decides }) };
}

function explanationsOf(
  search: Search,
  other: number,
  check: MendCheck,
  mistakesMax: 1 | 2 | 3,
): Explanation[] {
  const singles = search.singles();
  const single = totalOf(singles);
  if (mistakesMax === 1 || single > other * SURE) return listed(singles, other, check);
  const pairs = search.combinations(2);
  const pair = totalOf(pairs);
  // A single mistake that is far less likely than two usual ones explains nothing.
  if (single * FAR_LESS > pair) return listed(singles, other + pair * PAIR_PART, check);
  const found = listed(pairs, other + single, check);
  if (found.length > 0 || mistakesMax === 2) return found;
  const triples = listed(search.combinations(3), other, check);
  return triples.filter(({ odds }) => odds >= TRIPLE_ODDS_MIN);
}

/** So many times likelier than anything else, single mistakes are listed alone. */
const SURE = 1000;
const FAR_LESS = 3000;
/** Part of the weight of all pairs that counts against a single: most pairs only happen to fit. */
const PAIR_PART = 0.1;
/** Three at once are found for almost any difference; below these odds they say nothing. */
const TRIPLE_ODDS_MIN = 0.01;

function totalOf(weighed: readonly Weighed[]): number {
  return weighed.reduce((sum, { weight }) => sum + weight, 0);
}

interface Weighed {
  readonly mistakes: readonly Hypothesis[];
  readonly edits: readonly Edit[];
  readonly weight: number;
}

/** Hypotheses about a situation, found again by what they do. */
class Search {
  readonly #situation: Situation;
  readonly #habits: Habits;
  readonly evidence: Evidence;
  readonly #index = new GapIndex<Hypothesis>();
  readonly #weighed = new Map<number, readonly Weighed[]>();
  readonly #chances = new Map<number, number>();
  readonly #stalls: readonly string[];

  constructor(situation: Situation, stalls: readonly string[]) {
    this.#situation = situation;
    this.#stalls = stalls;
    this.#habits = new Habits(situation);
    this.evidence = new Evidence(situation, this.#habits);
  }

  /** Single mistakes that account for the whole difference, weighed; most likely first. */
  singles(): Weighed[] {
    const taking = new TakingWhole(this.#situation.difference);
    this.#collect(taking);
    return this.#weighAll(taking.found);
  }

  /** Two or three mistakes that together account for the whole difference. */
  combinations(count: 2 | 3): Weighed[] {
    const { difference } = this.#situation;
    if (this.#index.size === 0) this.#collect(this.#takingParts());
    const classes: number[][] =
      count === 2 ? this.#index.pairs(difference) : this.#index.triples(difference, TRIPLES_MAX);
    const likeliest = classes
      .map((each) => ({ each, chance: this.#chanceOfAll(each) }))
      .sort((a, b) => b.chance - a.chance)
      .slice(0, COMBINATIONS_MAX);
    return mergedSame(likeliest.flatMap(({ each }) => this.#combine(each)));
  }

  #takingParts(): Taking {
    return new TakingParts(this.#index, this.#situation);
  }

  #collect(into: Taking): void {
    const situation = this.#situation;
    const stalls = this.#stalls;
    const taking = stalls.length === 0 ? into : new TakingOfStalls(into, situation, stalls);
    wrongNumbers(situation, taking);
    wrongNames(situation, taking);
    wrongWays(situation, taking);
    tooMany(situation, taking);
    const adding = new Adding(situation, this.#habits, taking);
    missingGoods(adding);
    missingMoney(adding);
  }

  /** Mistakes of several effects at once; of each effect the likeliest few. */
  #combine(classes: readonly number[]): Weighed[] {
    let found: { mistakes: Hypothesis[]; weight: number }[] = [{ mistakes: [], weight: 1 }];
    for (const index of classes) {
      const members = this.#weigh(index).slice(0, EACH_MAX);
      found = found.flatMap(({ mistakes, weight }) =>
        members.map((member) => ({
          mistakes: [...mistakes, ...member.mistakes],
          weight: weight * member.weight,
        })),
      );
    }
    return found.flatMap(({ mistakes, weight }) => {
      const edits = editsOfAll(mistakes);
      return edits === undefined ? [] : [{ mistakes, edits, weight }];
    });
  }

  #chanceOfAll(classes: readonly number[]): number {
    return classes.reduce((chance, index) => chance * this.#chanceOf(index), 1);
  }

  #chanceOf(index: number): number {
    const known = this.#chances.get(index);
    if (known !== undefined) return known;
    const chance = this.#index.itemsOf(index).reduce((sum, item) => sum + item.chance, 0);
    this.#chances.set(index, chance);
    return chance;
  }

  #weigh(index: number): readonly Weighed[] {
    const known = this.#weighed.get(index);
    if (known !== undefined) return known;
    const weighed = this.#weighAll(this.#index.itemsOf(index));
    this.#weighed.set(index, weighed);
    return weighed;
  }

  #weighAll(hypotheses: readonly Hypothesis[]): Weighed[] {
    return mergedSame(
      hypotheses.flatMap((mistake) => {
        const edits = editsOfAll([mistake]);
        const weight = this.evidence.weigh(mistake);
        return edits === undefined ? [] : [{ mistakes: [mistake], edits, weight }];
      }),
    );
  }
}

/** Several mistakes may be put right by the same edits: their chances add up. */
function mergedSame(weighed: readonly Weighed[]): Weighed[] {
  const byEdits = new Map<string, Weighed>();
  for (const each of weighed) {
    const key = each.edits
      .map((edit) => JSON.stringify(edit))
      .sort(byText)
      .join(' ');
    const known = byEdits.get(key);
    if (known === undefined) byEdits.set(key, each);
    else {
      const likelier = known.weight >= each.weight ? known : each;
      byEdits.set(key, { ...likelier, weight: known.weight + each.weight });
    }
  }
  return [...byEdits]
    .sort((a, b) => b[1].weight - a[1].weight || byText(a[0], b[0]))
    .map(([, each]) => each);
}

function listed(
  weighed: readonly Weighed[],
  otherwiseWeight: number,
  check: MendCheck,
): Explanation[] {
  const total = weighed.reduce((sum, { weight }) => sum + weight, otherwiseWeight);
  const found: Explanation[] = [];
  for (const { mistakes, edits, weight } of weighed) {
    if (found.length === LISTED_MAX) break;
    if (!check.comesOutEven(edits)) continue;
    const [first] = mistakes;
    assert(first !== undefined, 'an explanation has a mistake');
    const kind =
      mistakes.length === 1
        ? first.sort
        : mistakes.length === 2
          ? 'two-mistakes'
          : 'three-mistakes';
    found.push({ edits, odds: weight / total, kind, mistakes });
  }
  return found;
}
