/**
 * How hard a text is to read, by two published formulas. Sentences are counted as Flesch does:
 * every unit of thought that ends with a full stop, question mark, colon or semicolon.
 *
 * - English: the Flesch-Kincaid grade level (Kincaid, Fishburne, Rogers and Chissom, "Derivation of
 *   new readability formulas…", Research Branch Report 8-75, 1975):
 *   0.39 words a sentence + 11.8 syllables a word − 15.59, a grade of US schools.
 * - Spanish: the perspicuity of Szigriszt Pazos ("Sistemas predictivos de legibilidad del mensaje
 *   escrito", Universidad Complutense de Madrid, 1993): 206.835 − 62.3 syllables a word − words a
 *   sentence; on the INFLESZ scale (Barrio-Cantalejo and others, 2008) 55 to 65 is normal and 65 to
 *   80 fairly easy.
 */
export interface TextSize {
  readonly sentences: number;
  readonly words: number;
  readonly syllables: number;
}

export function fleschKincaidGrade({ sentences, words, syllables }: TextSize): number {
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}

export function szigrisztPerspicuity({ sentences, words, syllables }: TextSize): number {
  return 206.835 - 62.3 * (syllables / words) - words / sentences;
}

const WORD = /\p{L}[\p{L}’'-]*|\d[\d.,]*/gu;

export function sizeOf(texts: readonly string[], syllablesIn: (word: string) => number): TextSize {
  const units = texts.flatMap((text) => text.split(/[.?!:;]+(?:\s|$)/)).map(wordsOf);
  const said = units.filter((words) => words.length > 0);
  const words = said.flat();
  const syllables = words.reduce((sum, word) => sum + syllablesIn(word), 0);
  return { sentences: said.length, words: words.length, syllables };
}

export function wordsOf(text: string): readonly string[] {
  return text.match(WORD) ?? [];
}

/**
 * Vowel groups less what is not spoken, the usual count by rule: an e at the end, and that of -ed
 * and -es, but for those that are spoken (counted, boxes).
 */
export function englishSyllables(word: string): number {
  if (/^\d/.test(word)) return 1;
  const spoken = word
    .toLowerCase()
    .replace(/[’'](?:s|re|ll)?$/, '')
    .replace(/([^aeiouytd])ed$/, '$1d')
    .replace(/([^aeiouycgszx]|[^sc]h)es$/, '$1s')
    .replace(/([^aeiouy][^aeiouyl]|[aeiouy][^aeiouy])e$/, '$1');
  const groups = spoken.match(/[aeiouy]+/g)?.length ?? 0;
  // Two vowels of these pairs are spoken apart.
  const apart = spoken.match(/i[ao](?!n)|[aeu]o(?![uo])|[^q]ua|eing/g)?.length ?? 0;
  return Math.max(1, groups + apart);
}

/** Strong vowels each make a syllable, weak ones (i, u without an accent) join their neighbours. */
export function spanishSyllables(word: string): number {
  if (/^\d/.test(word)) return 1;
  const spoken = word
    .toLowerCase()
    .replace(/qu/g, 'q')
    .replace(/gu(?=[eiéí])/g, 'g')
    .replace(/y$/, 'i');
  const groups = spoken.match(/[aeiouáéíóúü]+/g) ?? [];
  return Math.max(
    1,
    groups.reduce((sum, group) => sum + Math.max(1, group.match(/[aeoáéíóú]/g)?.length ?? 0), 0),
  );
}
