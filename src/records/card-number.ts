/**
 * Finds what looks like a payment card number in free text, so that it is never kept
 * (PCI DSS 4.0.1 requirement 3.3.1; check digit by ISO/IEC 7812-1 annex B, the Luhn formula).
 */
const DIGITS_MIN = 13;
const DIGITS_MAX = 19;
/** Digits that a person may have set apart with single spaces, dots or dashes. */
const RUN = /\d(?:[ .-]?\d){12,}/g;

export function hasCardNumber(text: string): boolean {
  for (const run of text.match(RUN) ?? []) {
    if (anyWindowPasses(run.replace(/\D/g, ''))) return true;
  }
  return false;
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
