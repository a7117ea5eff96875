import { hasCardNumber } from '../records/card-number.ts';

/** Shorter text than the shortest card number needs no look. */
const CARD_DIGITS_MIN = 13;
/** Ids (RFC 9562) are long and may pass the card check by chance; they are not looked at. */
const UUID = /\b[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}\b/gi;

/** True where text that a person wrote holds what looks like a payment card number. */
export function holdsCardNumber(text: string): boolean {
  if (text.length < CARD_DIGITS_MIN || !hasCardNumber(text)) return false;
  return hasCardNumber(text.replace(UUID, ' id '));
}
