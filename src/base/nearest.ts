/** Finds the known word that was most likely meant, for a message that says what is wanted. */

/** The word that is fewest single-letter changes away, or undefined where none is close. */
export function nearest(said: string, words: Iterable<string>): string | undefined {
  let best: string | undefined;
  // More than a third of the letters wrong is another word, not a slip.
  let least = Math.max(1, Math.floor(said.length / 3)) + 1;
  for (const word of words) {
    if (Math.abs(word.length - said.length) >= least) continue;
    const changes = changesBetween(said.toLowerCase(), word);
    if (changes < least) {
      least = changes;
      best = word;
    }
  }
  return best;
}

/** Levenshtein's distance: inserted, dropped and changed letters (V. Levenshtein 1965). */
function changesBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      const dropped = (row[j] ?? 0) + 1;
      const inserted = (next[j - 1] ?? 0) + 1;
      next.push(Math.min((row[j - 1] ?? 0) + same, dropped, inserted));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
