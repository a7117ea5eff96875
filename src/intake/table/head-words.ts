/** Finds columns by the words that their heads commonly go by. */
export class HeadFinder {
  readonly #heads: readonly string[];
  readonly #taken = new Set<string>();

  constructor(heads: readonly string[]) {
    this.#heads = heads.filter((head) => head !== '');
  }

  /**
   * The first free head that is one of the words, the telling ones first, else one that contains a
   * word of more than three letters; it is not found again.
   */
  take(words: readonly string[]): string | undefined {
    const free = this.free();
    const exact = words.flatMap((word) => free.filter((head) => plainHead(head) === word));
    const holding = words
      .filter((word) => word.length > 3)
      .flatMap((word) => free.filter((head) => holds(head, word)));
    const head = exact[0] ?? holding[0];
    if (head !== undefined) this.#taken.add(head);
    return head;
  }

  /** All free heads that are or contain one of the words. */
  takeAll(words: readonly string[]): string[] {
    const found = this.free().filter((head) => words.some((word) => holds(head, word)));
    for (const head of found) this.#taken.add(head);
    return found;
  }

  free(): string[] {
    return this.#heads.filter((head) => !this.#taken.has(head));
  }
}

/** `Money out ($)` as `money out`: letters and digits alone, in small letters. */
export function plainHead(head: string): string {
  return head
    .toLowerCase()
    .replace(/[^\p{L}\d]+/gu, ' ')
    .trim();
}

function holds(head: string, word: string): boolean {
  return ` ${plainHead(head)} `.includes(` ${word} `);
}
