/**
 * What a number may have been before it was keyed wrongly: its digits undone slip by slip. Knows
 * digits and nothing of what is counted.
 */

export type DigitSlip =
  | 'wrong-digit'
  | 'neighbours-swapped'
  | 'digits-swapped'
  | 'digit-left-out'
  | 'digit-added'
  | 'out-by-ten'
  | 'out-by-hundred'
  | 'twin'
  | 'teen-for-ten';

export interface Truth {
  readonly value: number;
  readonly slip: DigitSlip;
  /**
   * The part of this slip's chance that gives just the number as keyed, once it happens to the
   * truth: one over the ways in which the slip can happen, keypad neighbours counted threefold.
   */
  readonly share: number;
}

/**
 * Every whole number of 1 or more that one slip turns into the keyed one; the same truth may come
 * by several slips. @param keyed a whole number of 1 or more
 */
export function truthsBehind(keyed: number): Truth[] {
  const digits = String(keyed);
  const found: Truth[] = [];
  const add = (text: string, slip: DigitSlip, share: number): void => {
    const value = Number(text);
    if (text === '' || text.startsWith('0') || value === keyed) return;
    if (Number.isSafeInteger(value)) found.push({ value, slip, share });
  };
  wrongDigits(digits, add);
  swaps(digits, add);
  leftOutAndAdded(digits, add);
  shifts(digits, add);
  twins(digits, add);
  teens(digits, add);
  return found;
}

/** True where a difference is a whole multiple of nine, as after any swap or shift of digits. */
export function isMultipleOfNine(difference: number): boolean {
  return difference !== 0 && difference % 9 === 0;
}

type Add = (text: string, slip: DigitSlip, share: number) => void;

/** Digits beside each other on a number pad (1-2-3 in one row; 0 below 1 and 2). */
const PAD_NEIGHBOURS: readonly string[] = [
  '12',
  '0245',
  '013456',
  '256',
  '12578',
  '12346789',
  '23589',
  '458',
  '45679',
  '568',
];
const NEIGHBOUR_TIMES = 3;

function wrongDigits(digits: string, add: Add): void {
  for (let at = 0; at < digits.length; at += 1) {
    const keyed = digits[at] ?? '';
    for (let digit = 0; digit <= 9; digit += 1) {
      if (String(digit) === keyed) continue;
      const near = PAD_NEIGHBOURS[digit] ?? '';
      const all = 9 + (NEIGHBOUR_TIMES - 1) * near.length;
      const part = (near.includes(keyed) ? NEIGHBOUR_TIMES : 1) / all;
      add(replaced(digits, at, 1, String(digit)), 'wrong-digit', part / digits.length);
    }
  }
}

function swaps(digits: string, add: Add): void {
  const { length } = digits;
  for (let left = 0; left < length; left += 1) {
    for (let right = left + 1; right < length; right += 1) {
      if (digits[left] === digits[right]) continue;
      const swapped = [...digits];
      swapped[left] = digits[right] ?? '';
      swapped[right] = digits[left] ?? '';
      const text = swapped.join('');
      if (right === left + 1) add(text, 'neighbours-swapped', 1 / (length - 1));
      else add(text, 'digits-swapped', 2 / ((length - 1) * (length - 2)));
    }
  }
}

function leftOutAndAdded(digits: string, add: Add): void {
  const { length } = digits;
  const seen = new Set<string>();
  for (let at = 0; at <= length; at += 1) {
    for (let digit = 0; digit <= 9; digit += 1) {
      const text = replaced(digits, at, 0, String(digit));
      if (seen.has(text)) continue;
      seen.add(text);
      add(text, 'digit-left-out', 1 / (length + 1));
    }
  }
  if (length === 1) return;
  for (let at = 0; at < length; at += 1) {
    // A doubled key is the common way in which a digit comes in.
    const isDouble = digits[at] === digits[at - 1] || digits[at] === digits[at + 1];
    add(replaced(digits, at, 1, ''), 'digit-added', (isDouble ? 5 : 1) / (14 * length));
  }
}

/** Digits moved by one or two places: a decimal point or zeros forgotten, or keyed too many. */
function shifts(digits: string, add: Add): void {
  add(`${digits}0`, 'out-by-ten', 1);
  add(`${digits}00`, 'out-by-hundred', 1);
  if (digits.endsWith('0')) add(digits.slice(0, -1), 'out-by-ten', 1);
  if (digits.endsWith('00')) add(digits.slice(0, -2), 'out-by-hundred', 1);
}

/** 33 for 44. */
function twins(digits: string, add: Add): void {
  for (let at = 0; at + 1 < digits.length; at += 1) {
    if (digits[at] !== digits[at + 1]) continue;
    for (let digit = 0; digit <= 9; digit += 1) {
      add(replaced(digits, at, 2, `${digit}${digit}`), 'twin', 1 / 9);
    }
  }
}

/** 13 for 30, as heard. */
function teens(digits: string, add: Add): void {
  for (let at = 0; at + 1 < digits.length; at += 1) {
    const [first = '', second = ''] = [digits[at], digits[at + 1]];
    if (first === '1' && second > '2') {
      add(replaced(digits, at, 2, `${second}0`), 'teen-for-ten', 1);
    }
    if (second === '0' && first > '2') {
      add(replaced(digits, at, 2, `1${first}`), 'teen-for-ten', 1);
    }
  }
}

function replaced(digits: string, at: number, count: number, by: string): string {
  return digits.slice(0, at) + by + digits.slice(at + count);
}
