import type { Catalogue, Entry } from './catalogue.ts';
import { type Customs, customsOf } from './customs.ts';
import type { Language } from './language.ts';
import { toldIn } from './told.ts';

/**
 * Says a sentence in a language: say`${left} of ${total} to go.` The English text in the code is
 * the key of its translation ("{0} of {1} to go."), so English needs no catalogue, and a text that
 * a catalogue lacks is said in English. Made from its arguments alone; it reads no locale.
 */
export interface Say extends Customs {
  /** A part that is a whole number is written by the language's customs. */
  (words: TemplateStringsArray, ...parts: readonly SayPart[]): string;
  readonly language: Language;
  /**
   * A sentence that hangs on a number: say.count(units)`# unit left|# units left`. English has two
   * forms, parted by `|`; another language has as many as its plural rules want. `#` is the number.
   */
  count(number: number): SayTag;
  /** An English word that means several things: say.as('verb')`Count`. */
  as(meaning: string): SayTag;
  /** A sentence with links or other nodes as its parts, in the order of the language. */
  pieces<T>(words: TemplateStringsArray, ...parts: readonly (SayPart | T)[]): (string | T)[];
  /** A refusal or finding, which is written in English where it is made. */
  told(english: string): string;
}

export type SayPart = string | number;
export type SayTag = (words: TemplateStringsArray, ...parts: readonly SayPart[]) => string;

/** English stands in the code. */
const NO_WORDS: Catalogue = { said: {}, told: {} };

export function sayIn(language: Language, catalogue: Catalogue = NO_WORDS): Say {
  const customs = customsOf(language);
  const plain = (part: SayPart): string => (typeof part === 'number' ? customs.units(part) : part);
  const fill = (text: string, parts: readonly SayPart[], number?: string): string =>
    text.replace(PLACE, (place, at?: string) =>
      at === undefined ? (number ?? place) : plain(parts[Number(at)] ?? ''),
    );
  const entry = (key: string): Entry | undefined => catalogue.said[key];
  const whole = (key: string): string => {
    const found = entry(key);
    return typeof found === 'string' ? found : key.slice(key.indexOf(MEANING) + 1);
  };
  const say: SayTag = (words, ...parts) => fill(whole(keyOf(words)), parts);
  return Object.assign(say, customs, {
    language,
    count: (number: number): SayTag => {
      const category = customs.category(number);
      return (words, ...parts) => {
        const key = keyOf(words);
        const found = entry(key) ?? englishForms(key);
        const text = typeof found === 'string' ? found : (found[category] ?? found.other);
        return fill(text, parts, customs.units(number));
      };
    },
    as:
      (meaning: string): SayTag =>
      (words, ...parts) =>
        fill(whole(`${meaning}${MEANING}${keyOf(words)}`), parts),
    pieces: <T>(words: TemplateStringsArray, ...parts: readonly (SayPart | T)[]) =>
      // Split by a pattern with one group, every other piece is the number of a part.
      whole(keyOf(words))
        .split(/\{(\d+)\}/)
        .map((piece, at) => (at % 2 === 0 ? piece : (parts[Number(piece)] ?? '')))
        .map((piece) => (typeof piece === 'number' ? plain(piece) : piece))
        .filter((piece) => piece !== ''),
    told: toldIn(catalogue.told),
  });
}

const PLACE = /\{(\d+)\}|#/g;
/** Parts the meaning of a key from its text. */
const MEANING = '§';

const keys = new WeakMap<TemplateStringsArray, string>();

/** A long text may be broken in the code: a line break with what stands around it is one space. */
function keyOf(words: TemplateStringsArray): string {
  const known = keys.get(words);
  if (known !== undefined) return known;
  const joined = words.reduce((key, text, at) => `${key}{${at - 1}}${text}`);
  const key = joined.replace(/\s*\n\s*/g, ' ');
  keys.set(words, key);
  return key;
}

/** A number that no catalogue knows forms for is told by the English ones. */
function englishForms(key: string): Entry {
  const [one = '', other = one] = key.split('|');
  return { one, other };
}
