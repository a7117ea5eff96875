import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { GlyphCoverage } from './glyph-coverage.ts';

/**
 * The fonts of all papers, from packages and never from the machine or the network: Noto Sans
 * (Latin, Greek, Cyrillic, Devanagari) in one weight, then one font a further script. The Chinese
 * font is large and is read only once a paper needs it.
 */
export interface PaperFont {
  readonly family: string;
  readonly file: string;
}

const require = createRequire(import.meta.url);

/** In every paper, in this order of preference. */
export const usualFonts: readonly PaperFont[] = [
  font('Noto Sans', 'noto-sans', '400Regular', 'NotoSans_400Regular'),
  font('Noto Sans Arabic', 'noto-sans-arabic', '400Regular', 'NotoSansArabic_400Regular'),
  font('Noto Sans Hebrew', 'noto-sans-hebrew', '400Regular', 'NotoSansHebrew_400Regular'),
];

/** Chinese characters and Japanese syllables. */
export const hanFont: PaperFont = font(
  'Noto Sans SC',
  'noto-sans-sc',
  '400Regular',
  'NotoSansSC_400Regular',
);

function font(family: string, name: string, weight: string, file: string): PaperFont {
  return { family, file: require.resolve(`@expo-google-fonts/${name}/${weight}/${file}.ttf`) };
}

export function fontBytes(one: PaperFont): Buffer {
  return readFileSync(one.file);
}

const covered = new Map<string, GlyphCoverage>();

export function coverageOf(one: PaperFont): GlyphCoverage {
  const known = covered.get(one.file) ?? new GlyphCoverage(fontBytes(one));
  covered.set(one.file, known);
  return known;
}
