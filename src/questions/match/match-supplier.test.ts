import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import { matchSupplier } from './match-supplier.ts';
import { missingSupplierRecords } from './missing-supplier-records.ts';
import type { SupplierLineToMatch } from './supplier-papers.ts';

const book = testBook({ honey: 800, jam: 650, tea: 500 }, ['ada']);
const setup = [book.setting('neighbour', { neighbour: 'dale', name: 'Dale group' })];
const delivery = book.movement('delivery', {
  date: '2027-02-08',
  lines: { honey: 24, jam: 12 },
  slip: 'LG-1',
});
const swapIn = book.movement('swap-in', {
  date: '2027-02-10',
  neighbour: 'hill',
  lines: { jam: 6 },
});
const debit = book.movement('debit', { date: '2027-03-01', cents: 12_000 });
const records = [...setup, delivery, swapIn, debit];

type Said = Partial<Omit<SupplierLineToMatch, 'line'>>;

function statement(...lines: readonly Said[]) {
  return lines.map((said, at) => ({
    line: at + 1,
    date: '2027-02-08',
    sort: 'delivery' as const,
    goods: {},
    cents: undefined,
    reference: undefined,
    neighbour: undefined,
    ...said,
  }));
}

const honey = { goods: { honey: 24 }, cents: 19_200, reference: 'LG 1' };
const jam = { goods: { jam: 12 }, cents: 7800, reference: 'LG 1' };
const theirSwap = { date: '2027-02-10', sort: 'swap-in', neighbour: 'hill', goods: { jam: 6 } };
const theirDebit = { date: '2027-03-01', sort: 'debit', cents: 12_000 } as const;

function matched(...lines: readonly Said[]) {
  return matchSupplier(book.ledger(records), { lines: statement(...lines) });
}

describe('what agrees', () => {
  it('is by slip, by content, on the same day and alone: sure', () => {
    const found = matched(honey, jam, { ...theirSwap, sort: 'swap-in' }, theirDebit);
    expect(found.matched.map(({ line, records: ids, sure }) => [line, ids, sure])).toEqual([
      [1, [delivery.id], true],
      [2, [delivery.id], true],
      [3, [swapIn.id], true],
      [4, [debit.id], true],
    ]);
    expect(found).toMatchObject({ unmatchedLines: [], unmatchedRecords: [], differ: [] });
    expect(found.bankBalance).toBe(found.bookBalance);
  });

  it('is also a delivery as one amount, some days later, not sure', () => {
    const found = matched({ date: '2027-02-11', cents: 27_000 });
    expect(found.matched).toMatchObject([{ records: [delivery.id], sure: false }]);
  });

  it('is also one amount for several orders, where only one set comes to it', () => {
    const orders = ['a', 'b', 'c'].map((order, at) =>
      book.movement('gift', { lines: { tea: at + 1 }, from: 'supplier', order }),
    );
    const line = { date: '2027-02-03', sort: 'gift', cents: 2000 } as const;
    const found = matchSupplier(book.ledger(orders), { lines: statement(line) });
    expect(found.matched[0]?.records).toEqual([orders[0]?.id, orders[2]?.id]);
  });
});

describe('what differs says by what', () => {
  it.each([
    ['units', [honey, { ...jam, goods: { jam: 21 } }], { product: 'jam', theirs: 21, ours: 12 }],
    ['units', [honey], { product: 'jam', theirs: 0, ours: 12 }],
    ['amount', [honey, { ...jam, cents: 7080 }], { theirs: 7080, ours: 7800 }],
    ['amount', [{ ...theirDebit, cents: 12_500 }], { theirs: 12_500, ours: 12_000 }],
    [
      'neighbour',
      [{ ...theirSwap, sort: 'swap-in', neighbour: 'dale' }],
      { theirs: 'dale', ours: 'hill' },
    ],
    ['way', [{ ...theirSwap, sort: 'swap-out' }], { theirs: 'out' }],
  ] as const)('%s', (kind, lines, by) => {
    expect(matched(...lines).differ.map((each) => each.by)).toEqual([{ kind, ...by }]);
  });

  it('leaves the other lines of the paper in the pile that agrees', () => {
    const found = matched(honey, { ...jam, goods: { jam: 21 } });
    expect(found.matched.map(({ line }) => line)).toEqual([1]);
    expect(found.unmatchedLines).toEqual([2]);
    expect(found.onlyOurs).not.toContain(delivery.id);
  });
});

describe('what only one has', () => {
  it('is a swap with its neighbour, offered filled in', () => {
    const line = { ...theirSwap, sort: 'swap-out', neighbour: 'dale', goods: { tea: 3 } } as const;
    const found = matched({ ...line, reference: 'S-9' });
    expect(found.onlyTheirs).toHaveLength(1);
    expect(missingSupplierRecords(book.ledger(records), found.onlyTheirs)).toEqual([
      {
        lines: [1],
        record: {
          kind: 'swap-out',
          date: '2027-02-10',
          neighbour: 'dale',
          lines: { tea: 3 },
          slip: 'S-9',
        },
      },
    ]);
  });

  it('is a line listed twice, and a record that they do not have', () => {
    const found = matched(honey, jam, jam);
    expect(found.unmatchedLines).toEqual([3]);
    expect(found.onlyOurs).toEqual([swapIn.id, debit.id]);
    expect(found.outstanding).toBe(12_000 - 3900);
  });
});
