/**
 * The chance of an explanation in plain words, always beside its percentage. The words and their
 * limits are the likelihood scale of the IPCC (Guidance Note for Lead Authors of the Fifth
 * Assessment Report on Consistent Treatment of Uncertainties, 2010, table 1).
 * @param odds from 0 to 1
 */
export function oddsWords(odds: number): string {
  const word = SCALE.find(([least]) => odds >= least)?.[1] ?? 'very unlikely';
  return `${word}, ${percent(odds)}`;
}

const SCALE: readonly (readonly [least: number, word: string])[] = [
  [0.9, 'very likely'],
  [0.66, 'likely'],
  [1 / 3, 'about as likely as not'],
  [0.1, 'unlikely'],
];

/** Never 0 or 100: what is listed may always be so, and never surely is. */
function percent(odds: number): string {
  const whole = Math.round(odds * 100);
  if (whole < 1) return 'under 1 %';
  return whole > 99 ? 'over 99 %' : `${whole} %`;
}
