import { onceEach } from '../words/once-each.ts';
import type { Say } from '../words/say.ts';

/**
 * The chance of an explanation in plain words, always beside its percentage. The words and their
 * limits are the likelihood scale of the IPCC (Guidance Note for Lead Authors of the Fifth
 * Assessment Report on Consistent Treatment of Uncertainties, 2010, table 1).
 * @param odds from 0 to 1
 */
export function oddsWords(odds: number, say: Say): string {
  const word = scale(say).find(([least]) => odds >= least)?.[1] ?? say`very unlikely`;
  return say`${word}, ${percent(odds, say)}`;
}

const scale = onceEach((say): readonly (readonly [least: number, word: string])[] => [
  [0.9, say`very likely`],
  [0.66, say`likely`],
  [1 / 3, say`about as likely as not`],
  [0.1, say`unlikely`],
]);

/** Never 0 or 100: what is listed may always be so, and never surely is. */
function percent(odds: number, say: Say): string {
  const whole = Math.round(odds * 100);
  if (whole < 1) return say`under 1 %`;
  return whole > 99 ? say`over 99 %` : say`${whole} %`;
}
