/**
 * Whether one amount is the other with a slip of the hand: two neighbouring digits changed round,
 * one digit another, one left out or put in, or the point moved by one or two places. The first and
 * the last change the amount by a multiple of nine (Kester, Accounting: Theory and Practice, volume
 * 1, 1917, chapter XXV, rule 6). Equal amounts are none.
 */
export function isSlipOfDigits(a: number, b: number): boolean {
  if (a === b || Math.sign(a) !== Math.sign(b)) return false;
  const [short, long] = [String(Math.abs(a)), String(Math.abs(b))].sort(
    (x, y) => x.length - y.length,
  );
  if (short === undefined || long === undefined) return false;
  if (long === `${short}0` || long === `${short}00`) return true;
  if (long.length === short.length) return isOneOff(short, long) || isTurned(short, long);
  return long.length === short.length + 1 && hasOneMore(short, long);
}

function isOneOff(a: string, b: string): boolean {
  return [...a].filter((digit, at) => digit !== b[at]).length === 1;
}

function isTurned(a: string, b: string): boolean {
  const at = [...a].findIndex((digit, place) => digit !== b[place]);
  const turned = a.slice(0, at) + (a[at + 1] ?? '') + (a[at] ?? '') + a.slice(at + 2);
  return turned === b;
}

function hasOneMore(short: string, long: string): boolean {
  return [...long].some((_, at) => long.slice(0, at) + long.slice(at + 1) === short);
}
