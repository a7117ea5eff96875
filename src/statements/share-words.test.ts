import { describe, expect, it } from 'vitest';
import type { PoolShare } from '../questions/share/pool-share.ts';
import { type SheetChanges, shareSheet } from '../questions/share/share-sheet.ts';
import { english } from '../words/english.ts';
import { partsText } from './parts-text.ts';
import {
  carriedWords,
  lockWords,
  sellerReason,
  shareReason,
  sheetRefusalWords,
} from './share-words.ts';

const names = {
  seller: (id: string) => `${id.charAt(0).toUpperCase()}${id.slice(1)} M.`,
  product: (id: string) => id,
};
const pool: PoolShare = {
  products: { honey: 19 },
  sellers: [
    { seller: 'ada', weight: 120, carried: -0.4 },
    { seller: 'ben', weight: 60, carried: 0.4 },
  ],
  by: 'minutes',
  method: 'remainder',
};
const sheetOf = (changes: Partial<SheetChanges> = {}, from = pool) => {
  const sheet = shareSheet(from, { locked: {}, ...changes });
  if (!sheet.ok) throw new Error(sheet.refusal.kind);
  return sheet.value;
};

describe('why a share-out is fair', () => {
  it('says numbers first: units, minutes, how they were rounded, how far anybody is off', () => {
    expect(shareReason(sheetOf(), names, english)).toBe(
      '19 units over 180 minutes worked by 2 sellers: each total is the exact due rounded by ' +
        'largest remainder; nobody is more than 0.07 of a unit from due, earlier share-outs ' +
        'included.',
    );
  });

  it('names who was told apart only by the order of the list', () => {
    const even = { ...pool, by: 'even' as const, products: { honey: 3 } };
    const sellers = pool.sellers.map(({ seller }) => ({ seller, weight: 1 }));
    expect(shareReason(sheetOf({}, { ...even, sellers }), names, english)).toContain(
      '3 units over 2 sellers evenly: ',
    );
    expect(shareReason(sheetOf({}, { ...even, sellers }), names, english)).toContain(
      'Ada M. and Ben M. had equal claims on the last unit, so the order of the list decided',
    );
  });

  it('says it for one seller, with what was carried', () => {
    expect(sellerReason(sheetOf(), 'ada', english)).toBe(
      '120 of 180 minutes is 12.67 due, 0.4 too few so far; gets 13',
    );
    expect(sellerReason(sheetOf({}, { ...pool, method: 'divisor' }), 'ada', english)).not.toContain(
      'so far',
    );
    expect(carriedWords('Ada M.', -0.4, english)).toBe(
      'Ada M. has had 0.4 of a unit less than due so far.',
    );
    expect(carriedWords('Ada M.', 1.5, english)).toBe(
      'Ada M. has had 1.5 units more than due so far.',
    );
    expect(carriedWords('Ada M.', 0.001, english)).toBe('');
  });

  it('says what locks did, and why something cannot be', () => {
    const all = { locked: { ada: { honey: 4 }, ben: { honey: 2 } } };
    expect(lockWords(sheetOf(all), names, english)).toEqual([
      '13 honey not yet shared: every cell of honey is locked.',
    ]);
    const refusal = { kind: 'locked_too_much', product: 'honey', locked: 21, pool: 19 } as const;
    expect(sheetRefusalWords(refusal, names, english)).toBe(
      'honey: 21 locked, the pool has 19. Lower or unlock 2.',
    );
  });

  it('never turns credit into money', () => {
    const said = [
      shareReason(sheetOf(), names, english),
      sellerReason(sheetOf(), 'ada', english),
    ].join(' ');
    expect(said).not.toMatch(/\p{Sc}|\b[A-Z]{3}\b/u);
  });
});

it('parts of a unit have at most two places and no trailing zeros', () => {
  expect(
    [12.666, 19, 0.4, 10, -0.5, -0.001, 100].map((units) => partsText(units, english)),
  ).toEqual(['12.67', '19', '0.4', '10', '\u22120.5', '0', '100']);
});
