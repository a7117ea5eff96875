import type { SupplierSort } from './supplier-file.ts';

/**
 * What sort of line its words tell, by the words that suppliers' statements use (common practice);
 * the first row that fits. Which way a swap went may be left open: the amounts then tell it.
 */
export function sortOfWords(text: string): SupplierSort | 'swap' | undefined {
  const words = ` ${text
    .toLowerCase()
    .replace(/[^\p{L}\d]+/gu, ' ')
    .trim()} `;
  return TABLE.find(([, pattern]) => pattern.test(words))?.[0];
}

const TABLE: readonly (readonly [SupplierSort | 'swap', RegExp])[] = [
  [
    'debit-returned',
    / (?:debit|payment|ach|draft|withdrawal)s? .*(?:return|revers|unpaid|bounce|reject|fail|refus)/,
  ],
  [
    'debit-returned',
    / (?:return|revers|unpaid|bounce|reject|fail|refused)\w* .*(?:debit|payment|ach|draft)/,
  ],
  ['debit-returned', / (?:nsf|chargeback|insufficient) /],
  ['exchange', / (?:exchange|damage|damaged|replacement|replaced|one for one) /],
  ['swap-in', / (?:swap|transfer|trade)\w* (?:in|from) | received from | swapped in /],
  ['swap-out', / (?:swap|transfer|trade)\w* (?:out|to) | given to | swapped out /],
  ['swap', / (?:swap|transfer|trade)\w* /],
  ['proceeds', / (?:proceeds|profit|commission|earnings|margin|bonus|incentive)\w* /],
  ['gift', / (?:gift|gifts|donat\w*|giveaway|given away|give away|charity) /],
  ['card', / card\w* /],
  ['posted', / (?:posted|post|shipped|ship|mailed|shipping|parcel)(?: .*)? /],
  ['online', / (?:online|web|internet|hand|prepaid)(?: .*)? /],
  ['debit', / (?:debit|debits|ach|withdrawal|draft|direct debit|payment|sweep|collection|paid) /],
  [
    'delivery',
    / (?:deliver\w*|pickup|pick up|picked up|goods|shipment|invoice|order|cases|depot|collected) /,
  ],
];
