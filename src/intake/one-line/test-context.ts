import type { KnownNames } from './known-names.ts';
import type { LineContext } from './read-line.ts';

/** A small book for tests of the reader: Thursday, 8 April 2027, in dollars, cases of 12. */
export const names: KnownNames = {
  seller: [
    { id: 'ada', name: 'Ada M.', also: 'marsh Robin Marsh' },
    { id: 'ben', name: 'Ben L.', also: 'linden Kim Linden' },
    { id: 'lea', name: 'Lea L.', also: 'linden Kim Linden' },
    { id: 'ines', name: 'Inés C.', also: 'castillo Rosa Castillo' },
    { id: 'jun', name: 'Jun L.', also: 'li Wen Li' },
  ],
  product: [
    { id: 'honey', name: 'Wildflower honey' },
    { id: 'jam', name: 'Strawberry jam' },
    { id: 'tea-mint', name: 'Mint tea' },
    { id: 'tea-berry', name: 'Berry tea' },
    { id: 'granola', name: 'Oat granola' },
    { id: 'granola-nut', name: 'Nut granola' },
  ],
  neighbour: [
    { id: 'hill', name: 'Hill group' },
    { id: 'ferry', name: 'Ferry group' },
  ],
  stall: [
    { id: 'quay', name: 'Market hall', day: '2027-04-03' },
    { id: 'gate', name: 'Garden gate', day: '2027-03-27' },
    { id: 'gate-2', name: 'Garden gate', day: '2027-04-04' },
  ],
};

export const TODAY = '2027-04-08';

export function context(changed: Partial<LineContext> = {}): LineContext {
  return {
    names,
    today: TODAY,
    currency: 'USD',
    receipt: '',
    caseUnits: () => 12,
    owed: (seller) => (seller === 'ada' ? 2550 : seller === 'ben' ? -500 : 0),
    ...changed,
  };
}
