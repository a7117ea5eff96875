import { readFileSync } from 'node:fs';
import {
  converter,
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  wcagContrast,
} from 'culori';
import { describe, expect, it } from 'vitest';

/**
 * The colours that carry a meaning stay apart for people who lack one kind of cone, as simulated by
 * the matrices of Machado, Oliveira and Fernandes, "A Physiologically-based Model for Simulation of
 * Color Vision Deficiency" (IEEE TVCG 15(6), 2009, doi 10.1109/TVCG.2009.113), severity 1, on
 * linear RGB; distance by CIEDE2000 (CIE 142-2001; ISO/CIE 11664-6), both as the library culori has
 * them. Beside the colour there is always a sign and a word: checks/browser/states.test.ts.
 */
const palette = readFileSync(new URL('../../src/web/styles/palette.css', import.meta.url), 'utf8');
const MEANINGS = ['goods', 'money', 'difference', 'stop'] as const;
/** About four times what is just seen to differ side by side (2.3): common practice. */
const APART_LEAST = 10;
const CONTRAST_LEAST = 4.5;

type Colours = Readonly<Record<string, string>>;
const schemes = { light: 2, dark: 3 } as const;

function coloursOf(scheme: keyof typeof schemes): Colours {
  const rows = palette.matchAll(/--([\w-]+): light-dark\((#\w{6}), (#\w{6})\)/g);
  return Object.fromEntries([...rows].map((row) => [row[1], row[schemes[scheme]] ?? '']));
}

const linear = converter('lrgb');
const SIMULATIONS = {
  'without red cones': filterDeficiencyProt(1),
  'without green cones': filterDeficiencyDeuter(1),
  'without blue cones': filterDeficiencyTrit(1),
} as const;

/** The smallest distance of two meanings as somebody sees them, with their names. */
function nearest(colours: Colours, sees: keyof typeof SIMULATIONS): readonly [string, number] {
  const seen = MEANINGS.map((meaning) => {
    const { r, g, b } = linear(colours[meaning] ?? '') ?? { r: 0, g: 0, b: 0 };
    // The library's matrices multiply the numbers as they come: they are handed over as linear.
    const changed = SIMULATIONS[sees]({ mode: 'rgb', r, g, b });
    return [meaning, { mode: 'lrgb', r: changed.r, g: changed.g, b: changed.b }] as const;
  });
  const distance = differenceCiede2000();
  const pairs = seen.flatMap(([name, colour], at) =>
    seen
      .slice(at + 1)
      .map(([other, beside]) => [`${name} and ${other}`, distance(colour, beside)] as const),
  );
  return pairs.toSorted((a, b) => a[1] - b[1])[0] ?? ['', 0];
}

describe.each(['light', 'dark'] as const)('the %s scheme', (scheme) => {
  const colours = coloursOf(scheme);

  it.each(Object.keys(SIMULATIONS))('keeps meanings apart %s', (sees) => {
    const [pair, apart] = nearest(colours, sees as keyof typeof SIMULATIONS);
    expect([pair, apart >= APART_LEAST, apart]).toEqual([pair, true, apart]);
  });

  it.each(['ink', 'soft', ...MEANINGS])('%s has contrast on every ground', (text) => {
    for (const ground of ['paper', 'card', 'chosen']) {
      const contrast = wcagContrast(colours[text] ?? '', colours[ground] ?? '');
      expect([text, ground, contrast >= CONTRAST_LEAST]).toEqual([text, ground, true]);
    }
  });

  it('tells the stripes over made-up figures apart by lightness alone (WCAG 2.2, 1.4.11)', () => {
    const contrast = wcagContrast(colours.ink ?? '', colours['made-up'] ?? '');
    expect(contrast).toBeGreaterThanOrEqual(3);
  });
});

it('a palette of red and green would be caught', () => {
  const redAndGreen = {
    goods: '#1a7f37',
    money: '#0b4fa8',
    difference: '#8a6d00',
    stop: '#a03c00',
  };
  expect(nearest(redAndGreen, 'without green cones')[1]).toBeLessThan(APART_LEAST);
});
