import { plainText } from '../../base/plain-text.ts';
import { wordsOf } from './known-names.ts';

/** One word of a line, as it was written and as it is compared. */
export interface Token {
  readonly said: string;
  readonly plain: string;
}

export interface LineTokens {
  readonly tokens: readonly Token[];
  /** What stands after the first colon: a reason or a note, as it was written. */
  readonly tail: string;
}

/**
 * The words of a line. `2c` is two words and so is `12x`, unless a name has it whole.
 *
 * @param isName true for a word of a known name
 */
export function lineTokens(text: string, isName: (word: string) => boolean): LineTokens {
  const colon = /:(?=\s|$)/u.exec(text);
  const head = colon === null ? text : text.slice(0, colon.index);
  const tail = colon === null ? '' : text.slice(colon.index + 1).trim();
  const parts = head
    .replace(/(\p{Sc})\s+(?=\d)/gu, '$1')
    .replace(/[+&;()"“”]/gu, ' ')
    .split(/\s+/u)
    .map((part) => part.replace(/[,.!?:]+$/u, ''))
    .filter((part) => part !== '');
  return { tokens: parts.flatMap((part) => cut(part, isName)), tail };
}

function cut(part: string, isName: (word: string) => boolean): Token[] {
  const plain = plainText(part);
  const [, digits, letters] = /^(\d+)(\p{L}{1,9})$/u.exec(part) ?? [];
  if (digits === undefined || letters === undefined || isName(plain)) return [token(part)];
  // A name in two parts may still hold the word, as `h2o` in `h2o-tonic`.
  return wordsOf(part).some(isName) ? [token(part)] : [token(digits), token(letters)];
}

function token(said: string): Token {
  return { said, plain: plainText(said) };
}
