import { coverageOf, hanFont, type PaperFont, usualFonts } from './paper-fonts.ts';

/** Data whose every character some font can draw, and what was needed for that. */
export interface Printable {
  /** JSON text of the data. */
  readonly json: string;
  /** Families beyond the usual ones that the text needs. */
  readonly needsHan: boolean;
  /** Characters that no font has, each once; they are printed as an empty box. */
  readonly replaced: readonly string[];
}

const EMPTY_BOX = '\u25a1';
const BEYOND_ASCII = /[^ -~]/gu;
/** Isolates are drawn by nobody, and the joiners only shape their neighbours. */
const DRAWS_NOTHING = /[\u2068\u2069\u200c\u200d]/u;
/** No PDF may hold these, whatever a font says. */
const NEVER_DRAWN = /[\p{Cc}\p{Zl}\p{Zp}\ufeff]/u;
const BLANK = /\p{Zs}/u;
/**
 * JSON writes controls and broken surrogates as \u escapes: these need a look at the text itself.
 */
const ESCAPED = /\\[bfnrtu]/;

/** Replaces what no font can draw, so that a name in a rare script never fails a paper. */
export function printable(data: unknown): Printable {
  const found = new Found();
  const json = JSON.stringify(data).normalize('NFC');
  // Most papers need no change: they are looked through once, as a whole.
  if (!ESCAPED.test(json) && found.drawn(json) === json) return found.with(json);
  return found.with(
    JSON.stringify(data, (_key, part: unknown) =>
      typeof part === 'string' ? found.drawn(part.normalize('NFC')) : part,
    ),
  );
}

class Found {
  #needsHan = false;
  readonly #replaced = new Set<string>();

  with(json: string): Printable {
    return { json, needsHan: this.#needsHan, replaced: [...this.#replaced] };
  }

  drawn(text: string): string {
    return text.replace(BEYOND_ASCII, (character) => this.#drawnCharacter(character));
  }

  #drawnCharacter(character: string): string {
    if (DRAWS_NOTHING.test(character)) return character;
    if (NEVER_DRAWN.test(character)) return ' ';
    const font = fontFor(character.codePointAt(0) ?? 0);
    if (font !== undefined) {
      if (font === hanFont) this.#needsHan = true;
      return character;
    }
    if (BLANK.test(character)) return ' ';
    this.#needsHan = true;
    this.#replaced.add(character.toWellFormed());
    return EMPTY_BOX;
  }
}

const NO_FONT = 'none';
const fontByCodePoint = new Map<number, PaperFont | typeof NO_FONT>();

/** The first font that has the character; the large one, which also has the box, is read last. */
function fontFor(codePoint: number): PaperFont | undefined {
  let font = fontByCodePoint.get(codePoint);
  if (font === undefined) {
    const fonts = [...usualFonts, hanFont];
    font = fonts.find((one) => coverageOf(one).has(codePoint)) ?? NO_FONT;
    fontByCodePoint.set(codePoint, font);
  }
  return font === NO_FONT ? undefined : font;
}
