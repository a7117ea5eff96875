/**
 * The keystroke-level model: the time a practised person needs for a task is the sum of its
 * operators (S. Card, T. Moran, A. Newell, "The keystroke-level model for user performance time
 * with interactive systems", Communications of the ACM 23(7), 1980, pp. 396-410). The paper states
 * an error of about a fifth for a single task; it says nothing about mistakes or finding out.
 */

/** K a key or a tapped digit, P pointing and tapping, H hand to the mouse, M a decision. */
export type Operator = 'K' | 'P' | 'H' | 'M';

export type OperatorSeconds = Readonly<Record<Operator, number>>;

/** Seconds an operator takes: K of an average person who is no typist, the paper's other values. */
export const USUAL: OperatorSeconds = { K: 0.28, P: 1.1, H: 0.4, M: 1.35 };
/** An average skilled typist, and someone who looks for each letter. */
export const FAST: OperatorSeconds = { ...USUAL, K: 0.2 };
export const SLOW: OperatorSeconds = { ...USUAL, K: 0.5 };

/** Seconds of a task written as its operators, like `MPKKP` or `4M 15K`. */
export function modelSeconds(operators: string, seconds: OperatorSeconds): number {
  // Added up in whole milliseconds, so that sums are the same on every machine.
  let ms = 0;
  for (const [, count, name] of operators.matchAll(/(\d*)([KPHM])/g)) {
    ms += (count === '' ? 1 : Number(count)) * Math.round(seconds[operatorOf(name)] * 1000);
  }
  return ms / 1000;
}

/** `3M 4P`: how often each operator comes, decisions first. */
export function operatorSum(operators: string): string {
  const names = ['M', 'P', 'H', 'K'] as const;
  return names
    .map((name) => ({ name, count: operators.split(name).length - 1 }))
    .filter(({ count }) => count > 0)
    .map(({ name, count }) => `${count}${name}`)
    .join(' ');
}

function operatorOf(name: string | undefined): Operator {
  return name === 'P' || name === 'H' || name === 'M' ? name : 'K';
}
