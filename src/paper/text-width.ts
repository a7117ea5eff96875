import { coverageOf, usualFonts } from './paper-fonts.ts';

/** What a character takes that none of the usual fonts draws: Chinese ones are this wide. */
const WIDTH_OTHER = 1000;
/** Isolates and joiners take no room. */
const NO_ROOM = /[\u2068\u2069\u200c\u200d]/u;
/** Letters that stand one after the other; all others may join, stack or be drawn by two fonts. */
const PLAIN = /^[ -~\u00a0-\u024f\u0370-\u052f\u2010-\u2026\u20ac\u2212]*$/u;

const known = new Map<string, number>();

/** Points that a text takes in one line at a type size. */
export function textWidth(text: string, size: number): number {
  let thousandths = 0;
  for (const character of text) thousandths += characterWidth(character);
  return (thousandths * size) / 1000;
}

/** Whether `textWidth` is what the typesetter will find too, but for kerning. */
export function isWidthCertain(text: string): boolean {
  return PLAIN.test(text);
}

function characterWidth(character: string): number {
  let width = known.get(character);
  if (width === undefined) {
    width = NO_ROOM.test(character) ? 0 : advanceOf(character.codePointAt(0) ?? 0);
    known.set(character, width);
  }
  return width;
}

function advanceOf(codePoint: number): number {
  for (const font of usualFonts) {
    const advance = coverageOf(font).advance(codePoint);
    if (advance !== undefined) return advance;
  }
  return WIDTH_OTHER;
}
