/**
 * Every word that a paper or a sentence says, in English. A second language is a second object of
 * this shape; nothing else in this room spells a word out. Words of the trade only (DESIGN 1).
 */
export interface Words {
  /** BCP 47 tag of the language these words are in. */
  readonly language: string;
  readonly months: readonly string[];
}

export const wordsEn: Words = {
  language: 'en',
  months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
};
