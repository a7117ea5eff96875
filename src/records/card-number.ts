/**
 * Finds what looks like a payment card number in free text, so that it is never kept
 * (PCI DSS 4.0.1 requirement 3.3.1; check digit by ISO/IEC 7812-1 annex B, the Luhn formula).
 */
const DIGITS_MIN = 13;
const DIGITS_MAX = 19;
/** Digits that a person may have set apart with single dots, dashes or blanks of any script. */
const RUN = /\d(?:[\p{Zs}\t\p{Pd}.\u00b7\u2212]?\d){12,}/gu;
const ASCII = /^[ -~]*$/;
/** Characters that show nothing: they may stand between digits unseen. */
const UNSEEN = /\p{Cf}/gu;
/** Digits of other scripts; full-width and mathematical ones are plain after NFKC. */
const OTHER_DIGIT = /(?![0-9])\p{Nd}/gu;

/** Also where the digits are full-width or of another script, or set apart by unusual blanks. */
export function hasCardNumber(text: string): boolean {
  for (const run of plainDigits(text).match(RUN) ?? []) {
    if (anyWindowPasses(run.replace(/\D/g, ''))) return true;
  }
  return false;
}

function plainDigits(text: string): string {
  if (ASCII.test(text)) return text;
  return text.normalize('NFKC').replace(UNSEEN, '').replace(OTHER_DIGIT, plainDigit);
}

/**
 * Unicode keeps the ten digits of a script in a row, from nought on (Unicode Standard, 4.6): the
 * value is how many digits stand just before.
 */
function plainDigit(digit: string): string {
  const code = digit.codePointAt(0) ?? 0;
  let value = 0;
  while (value < 9 && /\p{Nd}/u.test(String.fromCodePoint(code - value - 1))) value += 1;
  return String(value);
}

/** A card number may be written against other digits, so every stretch of 13 to 19 is tried. */
function anyWindowPasses(digits: string): boolean {
  for (let start = 0; start + DIGITS_MIN <= digits.length; start += 1) {
    const longest = Math.min(DIGITS_MAX, digits.length - start);
    for (let length = DIGITS_MIN; length <= longest; length += 1) {
      if (passesLuhn(digits.slice(start, start + length))) return true;
    }
  }
  return false;
}

/** True where the last digit is the Luhn check digit of those before it. */
export function passesLuhn(digits: string): boolean {
  let sum = 0;
  for (let back = 0; back < digits.length; back += 1) {
    const digit = digits.charCodeAt(digits.length - 1 - back) - 48;
    const doubled = digit * 2;
    sum += back % 2 === 0 ? digit : doubled > 9 ? doubled - 9 : doubled;
  }
  return digits.length > 0 && sum % 10 === 0;
}
