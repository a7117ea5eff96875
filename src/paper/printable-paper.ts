import type { Paper } from '../statements/paper.ts';
import { coverageOf, hanFont, type PaperFont, usualFonts } from './paper-fonts.ts';

/** A paper whose every character some font can draw, with the fonts it needs. */
export interface PrintablePaper {
  readonly paper: Paper;
  /** Font families in order of preference. */
  readonly families: readonly string[];
  /** Characters that no font has, each once; they are printed as an empty box. */
  readonly replaced: readonly string[];
}

const EMPTY_BOX = '\u25a1';
const ASCII = /^[ -~]*$/;
/** Isolates are drawn by nobody, and the joiners only shape their neighbours. */
const DRAWS_NOTHING = /[\u2068\u2069\u200c\u200d]/u;
const SPACE = /\p{Zs}/u;
const CONTROL = /[\p{Cc}\p{Zl}\p{Zp}\ufeff]/u;

/** Replaces what no font can draw, so that a name in a rare script never fails a paper. */
export function printablePaper(paper: Paper): PrintablePaper {
  const reading = new Reading();
  const printable = mapTexts(paper, (text) => reading.printable(text));
  return {
    paper: printable,
    families: [...reading.families],
    replaced: [...reading.replaced],
  };
}

class Reading {
  readonly families = new Set<string>(usualFonts.map((font) => font.family));
  readonly replaced = new Set<string>();

  printable(text: string): string {
    if (ASCII.test(text)) return text;
    let printable = '';
    for (const character of text.normalize('NFC')) printable += this.#drawn(character);
    return printable;
  }

  #drawn(character: string): string {
    if (DRAWS_NOTHING.test(character)) return character;
    if (CONTROL.test(character)) return ' ';
    const font = fontFor(character.codePointAt(0) ?? 0);
    if (font === usualFonts[0]) return character;
    if (font === undefined && SPACE.test(character)) return ' ';
    this.families.add(font?.family ?? hanFont.family);
    if (font !== undefined) return character;
    this.replaced.add(character.toWellFormed());
    return EMPTY_BOX;
  }
}

const NO_FONT = 'none';
const fontByCodePoint = new Map<number, PaperFont | typeof NO_FONT>();

/** The first font that has the character; the large one is looked at last. */
function fontFor(codePoint: number): PaperFont | undefined {
  let font = fontByCodePoint.get(codePoint);
  if (font === undefined) {
    const fonts = [...usualFonts, hanFont];
    font = fonts.find((one) => coverageOf(one).has(codePoint)) ?? NO_FONT;
    fontByCodePoint.set(codePoint, font);
  }
  return font === NO_FONT ? undefined : font;
}

/** The same value with every text in it changed. */
function mapTexts<T>(value: T, change: (text: string) => string): T {
  return JSON.parse(
    JSON.stringify(value, (_key, part: unknown) =>
      typeof part === 'string' ? change(part) : part,
    ),
  );
}
