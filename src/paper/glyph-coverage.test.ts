import { describe, expect, it } from 'vitest';
import { GlyphCoverage } from './glyph-coverage.ts';
import { coverageOf, hanFont, usualFonts } from './paper-fonts.ts';

function familiesWith(character: string): string[] {
  const codePoint = character.codePointAt(0) ?? 0;
  const fonts = [...usualFonts, hanFont].filter((font) => coverageOf(font).has(codePoint));
  return [...new Set(fonts.map((font) => font.family))];
}

describe('the characters that a font draws', () => {
  it('are found for each script that papers promise', () => {
    for (const letter of 'aéñőЖΩन') expect(familiesWith(letter)).toContain('Noto Sans');
    expect(familiesWith('ع')).toEqual(['Noto Sans Arabic']);
    expect(familiesWith('ש')).toEqual(['Noto Sans Hebrew']);
    expect(familiesWith('中')).toEqual(['Noto Sans SC']);
    expect(familiesWith('か')).toEqual(['Noto Sans SC']);
    expect(familiesWith('□')).toEqual(['Noto Sans SC']);
  });

  it('are not found where there is no glyph', () => {
    expect(familiesWith('😀')).toEqual([]);
    expect(familiesWith('\u0001')).toEqual([]);
  });

  it('are none for a file without a character map', () => {
    expect(new GlyphCoverage(new Uint8Array(12)).has(65)).toBe(false);
  });
});
