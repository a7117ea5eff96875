import { plainText } from '../../base/plain-text.ts';

/** The names that a line may use, and how little of a name is enough. */

export const nameClasses = ['seller', 'product', 'neighbour', 'stall'] as const;
export type NameClass = (typeof nameClasses)[number];

export interface KnownName {
  readonly id: string;
  readonly name: string;
  /** Other names that a person may use instead, as the adult's for a seller. */
  readonly also?: string;
  /** The day of a stall. */
  readonly day?: string;
}

export type KnownNames = Readonly<Record<NameClass, readonly KnownName[]>>;

/** Whom a few words may mean, and how far they are from a whole name: 0 is the name itself. */
export interface Meant {
  readonly ids: readonly string[];
  readonly cost: number;
}

/** Costs of one word against a name; of several that could be meant only the least count. */
const WHOLE = 0;
const WORD = 1;
const START = 2;
const INSIDE = 4;
/** A family's name stands for its sellers, but a seller of that name comes first. */
const OTHER_NAME = 1;
const START_MIN = 2;
const INSIDE_MIN = 3;

interface Indexed {
  readonly known: KnownName;
  readonly plain: string;
  readonly words: readonly string[];
  readonly alsoWords: readonly string[];
}

export class NameIndex {
  readonly #byClass: ReadonlyMap<NameClass, readonly Indexed[]>;

  constructor(names: KnownNames) {
    this.#byClass = new Map(
      nameClasses.map((of) => [of, names[of].map((known) => indexed(known))] as const),
    );
  }

  /** True where the word is an id or a word of a name, which must then not be cut in two. */
  has(word: string): boolean {
    return nameClasses.some((of) =>
      this.#all(of).some(({ known, words }) => known.id === word || words.includes(word)),
    );
  }

  /** Whom these words mean in one list; undefined where nobody. @param words plain */
  meant(of: NameClass, words: readonly string[]): Meant | undefined {
    let best: { cost: number; ids: string[] } | undefined;
    for (const one of this.#all(of)) {
      const cost = costOf(words, one);
      if (cost === undefined || (best !== undefined && cost > best.cost)) continue;
      if (best?.cost === cost) best.ids.push(one.known.id);
      else best = { cost, ids: [one.known.id] };
    }
    return best;
  }

  known(of: NameClass, id: string): KnownName | undefined {
    return this.#all(of).find(({ known }) => known.id === id)?.known;
  }

  /** Every word of every name, for saying which one was nearly written. */
  words(): string[] {
    return nameClasses.flatMap((of) =>
      this.#all(of).flatMap(({ known, words, alsoWords }) => [known.id, ...words, ...alsoWords]),
    );
  }

  #all(of: NameClass): readonly Indexed[] {
    return this.#byClass.get(of) ?? [];
  }
}

function indexed(known: KnownName): Indexed {
  const words = [...wordsOf(known.id), ...wordsOf(known.name)];
  return { known, plain: plainText(known.name), words, alsoWords: wordsOf(known.also ?? '') };
}

/** The plain words of a name: `Wildflower honey (500 g)` is wildflower, honey, 500, g. */
export function wordsOf(name: string): string[] {
  return plainText(name)
    .split(/[^\p{L}\p{M}\d]+/u)
    .filter((word) => word !== '');
}

/** What a name costs for these words, all of which must be found in it. */
function costOf(words: readonly string[], one: Indexed): number | undefined {
  const said = words.join(' ');
  if (said === one.known.id || said === one.plain) return WHOLE;
  let cost = 0;
  for (const part of words.flatMap(wordsOf)) {
    const found = wordCost(part, one);
    if (found === undefined) return undefined;
    cost = Math.max(cost, found);
  }
  return words.flatMap(wordsOf).length === 0 ? undefined : cost;
}

function wordCost(word: string, one: Indexed): number | undefined {
  const own = forms(word).flatMap((form) => one.words.map((known) => formCost(form, known)));
  const other = one.alsoWords.map((known) => formCost(word, known) + OTHER_NAME);
  const least = Math.min(...own, ...other);
  return Number.isFinite(least) ? least : undefined;
}

function formCost(word: string, known: string): number {
  if (word === known) return WORD;
  if (word.length >= START_MIN && known.startsWith(word)) return START;
  return word.length >= INSIDE_MIN && known.includes(word) ? INSIDE : Number.POSITIVE_INFINITY;
}

/** A word and what it may be the plural of, in English and Spanish: jams, lattes, miel-es. */
function forms(word: string): string[] {
  if (word.length < 4 || !word.endsWith('s')) return [word];
  const singular = word.slice(0, -1);
  return word.endsWith('es') ? [word, singular, word.slice(0, -2)] : [word, singular];
}
