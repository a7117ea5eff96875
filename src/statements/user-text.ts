/**
 * Text that people typed, made safe to stand inside a sentence: nothing invisible in it, and text
 * that runs from right to left cannot reorder the words and numbers beside it (Unicode Standard
 * Annex 9, isolates).
 */

/** Controls, and format characters except the joiners that Arabic and Indic scripts need. */
const INVISIBLE = /[\p{Cc}\p{Zl}\p{Zp}]+|(?![\u200c\u200d])\p{Cf}/gu;
/** Strong right-to-left letters: Hebrew, Arabic, Syriac, Thaana, N'Ko and their later blocks. */
const RIGHT_TO_LEFT =
  /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;
const FIRST_STRONG_ISOLATE = '\u2068';
const POP_ISOLATE = '\u2069';

/** The text on one line, without controls and direction marks, isolated where it needs to be. */
export function userText(text: string): string {
  const plain = text
    .toWellFormed()
    .replace(INVISIBLE, (match) => (/[\p{Cc}\p{Zl}\p{Zp}]/u.test(match) ? ' ' : ''))
    .trim();
  return RIGHT_TO_LEFT.test(plain) ? FIRST_STRONG_ISOLATE + plain + POP_ISOLATE : plain;
}
