import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ledger } from '../ledger/ledger.ts';
import { FIRST_DAY, testBook } from '../ledger/test-book.ts';
import type { BookRecord } from '../records/record.ts';
import { type ProofRow, proofRow, type SeasonProof, seasonProof } from './season-proof.ts';

const book = testBook({ honey: 600, jam: 650 }, ['ada', 'ben']);

function proofOf(ledger: Ledger, asOf?: string): SeasonProof {
  const proof = seasonProof(ledger, asOf);
  if (!proof.ok) throw new Error(proof.refusal.name);
  return proof.value;
}

const season = [
  book.movement('delivery', { lines: { honey: 48, jam: 24 } }),
  book.movement('swap-in', { neighbour: 'hill', lines: { jam: 6 } }),
  book.movement('swap-out', { neighbour: 'hill', lines: { honey: 12 } }),
  book.movement('handover', { seller: 'ada', lines: { honey: 10, jam: 3 } }),
  book.movement('return', { seller: 'ada', lines: { honey: 2 } }),
  book.movement('gift', { from: 'stockroom', lines: { jam: 2 } }),
  book.movement('loss', { lines: { jam: 3 }, reason: 'wet case' }),
  book.movement('found', { lines: { jam: 1 }, reason: 'behind the shelf' }),
  book.movement('stall-close', {
    stall: 'quay',
    out: { honey: 10 },
    back: { honey: 4 },
    damaged: { honey: 1 },
    float: 2000,
    cash: 4900,
    cards: 0,
    cheques: 0,
  }),
  book.movement('payment', { seller: 'ada', tender: 'cash', cents: 5000 }),
  book.movement('settle', { proceeds: 900, date: '2027-04-18' }),
];

describe('the season proof', () => {
  const proof = proofOf(book.ledger(season));

  it('accounts for every unit, product by product', () => {
    expect(proof.products.map(({ product, cameIn, places }) => [product, cameIn, places])).toEqual([
      [
        'honey',
        { delivered: 48, swappedIn: 0, swappedOut: 12, broughtBack: 0 },
        { families: 8, stalls: 5, given: 0, lost: 1, shelf: 22 },
      ],
      [
        'jam',
        { delivered: 24, swappedIn: 6, swappedOut: 0, broughtBack: 0 },
        { families: 3, stalls: 0, given: 2, lost: 2, shelf: 23 },
      ],
    ]);
    expect(proof.total.toAccountFor).toBe(66);
    expect(proof.total.accountedFor).toBe(66);
    expect(proof.agrees).toBe(true);
  });

  it('tells goods brought back to the supplier from swaps with other groups', () => {
    const depot = book.setting('neighbour', { neighbour: 'depot', name: 'Depot', supplier: true });
    const back = book.movement('swap-out', { neighbour: 'depot', lines: { honey: 10 } });
    const { products, agrees } = proofOf(book.ledger([...season, depot, back]));
    expect(products[0]).toMatchObject({
      cameIn: { delivered: 48, swappedIn: 0, swappedOut: 12, broughtBack: 10 },
      toAccountFor: 26,
      places: { shelf: 12 },
    });
    expect(agrees).toBe(true);
  });

  it('says what came in, what is kept, and that both sides of the money agree', () => {
    expect(proof.money).toMatchObject({
      families: 5000,
      stalls: 2900,
      online: 0,
      gross: 7900,
      proceeds: 900,
      losses: 1900,
      short: 100,
      net: -1100,
      bank: 0,
      difference: 0,
    });
  });

  it('as of a day leaves later records out', () => {
    expect(proofOf(book.ledger(season), FIRST_DAY).money.proceeds).toBe(0);
  });

  it('does not agree where over in one product hides short in another', () => {
    const cameIn = { delivered: 5, swappedIn: 0, swappedOut: 0, broughtBack: 0 };
    const places = { families: 4, stalls: 0, given: 0, lost: 0, shelf: 0 };
    expect(proofRow('honey', cameIn, places).difference).toBe(-1);
  });
});

describe('in any book', () => {
  const lines = fc.dictionary(fc.constantFrom('honey', 'jam'), fc.integer({ min: 1, max: 40 }), {
    noNullPrototype: true,
  });
  const records = fc.array(
    fc
      .tuple(
        fc.constantFrom('delivery', 'swap-in', 'swap-out', 'handover', 'return', 'found', 'gift'),
        lines,
      )
      .map(([kind, lines]) => recordOf(kind, lines)),
    { maxLength: 12 },
  );

  it('both sides of every product are equal', () => {
    fc.assert(
      fc.property(records, (records) => {
        const proof = proofOf(book.ledger(records));
        expect(proof.agrees).toBe(true);
        expect(proof.products.every((row) => row.difference === 0)).toBe(true);
      }),
    );
  });

  it('would be caught leaving swaps out', () => {
    const withoutSwaps = (row: ProofRow) =>
      proofRow(row.product, { ...row.cameIn, swappedOut: 0 }, row.places).difference === 0;
    const checked = fc.check(
      fc.property(records, (records) => proofOf(book.ledger(records)).products.every(withoutSwaps)),
      { seed: 1 },
    );
    expect(checked.failed).toBe(true);
  });
});

function recordOf(kind: string, lines: Record<string, number>): BookRecord {
  switch (kind) {
    case 'swap-in':
      return book.movement('swap-in', { neighbour: 'hill', lines });
    case 'swap-out':
      return book.movement('swap-out', { neighbour: 'hill', lines });
    case 'handover':
      return book.movement('handover', { seller: 'ada', lines });
    case 'return':
      return book.movement('return', { seller: 'ben', lines });
    case 'found':
      return book.movement('found', { lines, reason: 'behind the shelf' });
    case 'gift':
      return book.movement('gift', { from: 'stockroom', lines });
    default:
      return book.movement('delivery', { lines });
  }
}
