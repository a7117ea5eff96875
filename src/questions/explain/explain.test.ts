import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Ledger } from '../../ledger/ledger.ts';
import { testBook } from '../../ledger/test-book.ts';
import type { BookRecord } from '../../records/record.ts';
import { type Edit, recordsOfEdits } from './edits.ts';
import { type Explained, explain } from './explain.ts';
import { type ByAccount, differenceOf, readObservation } from './observation.ts';

/** One mistake at a time in a small book, and what must be said about it. */
const PRICES = { honey: 800, jam: 650, tea: 500 };

function book() {
  return testBook(PRICES, ['ada', 'ben', 'cleo']);
}

function explained(ledger: Ledger, seen: ByAccount, day?: string): Explained {
  const observed = readObservation(ledger, seen);
  if (!observed.ok) throw new Error(observed.refusal);
  return explain(ledger, observed.value, { day });
}

function firstEdits(ledger: Ledger, seen: ByAccount): readonly Edit[] {
  return explained(ledger, seen).explanations[0]?.edits ?? [];
}

/** Written into the book by records and folded anew: what still differs from what was seen. */
function leftAfter(ledger: Ledger, edits: readonly Edit[], seen: ByAccount): object {
  let written = 0;
  const mends = recordsOfEdits(edits, ledger, () => {
    written += 1;
    const id = `0195f3c2-7d1a-7c3e-9a41-${String(written).padStart(12, '0')}`;
    return { id, at: '2028-01-01T00:00:00.000Z', by: 'manager' };
  });
  const mended = Ledger.of([...ledger.standing.records(), ...mends]);
  const observed = readObservation(mended, seen);
  if (!observed.ok) throw new Error(observed.refusal);
  return differenceOf(observed.value, mended.balances);
}

describe('single mistakes', () => {
  const made = book();
  const delivery = made.movement('delivery', { lines: { honey: 96, jam: 60, tea: 48 } });
  const out = made.movement('handover', { seller: 'ada', lines: { honey: 21 }, slip: 'D014' });
  const small = made.movement('handover', { seller: 'ben', lines: { honey: 3, jam: 4 } });
  const more = made.movement('handover', { seller: 'cleo', lines: { jam: 6, tea: 5 } });
  const paid = made.movement('payment', { seller: 'ben', tender: 'cash', cents: 5400 });
  const all = [delivery, out, small, more, paid];
  const ledger = made.ledger(all);
  const shelf = { honey: 72, jam: 50, tea: 43 };

  it('12 keyed as 21: the record and the right number', () => {
    const seen = { 'stock:stockroom': { ...shelf, honey: 81 } };
    const edit = { op: 'change', record: out.id, fields: { lines: { honey: 12 } } };
    expect(firstEdits(ledger, seen)).toEqual([edit]);
  });

  it('nothing is claimed where all agrees', () => {
    const answer = explained(ledger, { 'stock:stockroom': shelf, 'money:owed:ben': -400 });
    expect(answer).toEqual({ difference: {}, explanations: [], unexplained: false });
  });

  it('a product that is not named was seen as none', () => {
    const { difference } = explained(ledger, { 'stock:stockroom': { honey: 72, jam: 50 } });
    expect(difference).toEqual({ 'stock:stockroom': { tea: -43 } });
  });

  it('a handover that is there twice', () => {
    const again = made.movement('handover', { seller: 'cleo', lines: { jam: 6, tea: 5 } });
    const twice = made.ledger([...all, again]);
    const [first, second] = explained(twice, { 'stock:stockroom': shelf }).explanations;
    expect(first).toMatchObject({ kind: 'doubled', edits: [{ op: 'void', record: again.id }] });
    expect(second?.edits).toEqual([{ op: 'void', record: more.id }]);
  });

  it('goods out of the wrong family, told by both', () => {
    const seen = {
      'stock:seller:ben': {},
      'stock:seller:ada': { honey: 24, jam: 4 },
      'stock:stockroom': shelf,
    };
    const edit = { op: 'change', record: small.id, fields: { seller: 'ada' } };
    expect(firstEdits(ledger, seen)).toEqual([edit]);
  });

  it('a payment of swapped digits', () => {
    const seen = { 'money:owed:ben': 500, 'money:cashbox': 4500 };
    const edit = { op: 'change', record: paid.id, fields: { cents: 4500 } };
    expect(firstEdits(ledger, seen)).toEqual([edit]);
  });

  it('a missing payment is added with its seller, amount and way of paying', () => {
    const seen = { 'money:owed:cleo': 0, 'money:cards': 6400 };
    const record = { kind: 'payment', seller: 'cleo', tender: 'card', cents: 6400 };
    expect(firstEdits(ledger, seen)).toMatchObject([{ op: 'add', record }]);
  });

  it('two that say the same are a tie', () => {
    const alike = made.movement('handover', { seller: 'cleo', lines: { honey: 21 } });
    const ties = made.ledger([...all, alike]);
    const answer = explained(ties, { 'stock:stockroom': { ...shelf, honey: 60 } });
    const [one, other] = answer.explanations;
    expect(new Set([one?.edits, other?.edits].flat().map((edit) => edit?.op))).toEqual(
      new Set(['change']),
    );
    expect(one?.odds).toBeCloseTo(other?.odds ?? 0, 12);
    expect(answer.decides?.why).toBe('tells-apart');
  });
});

describe('what is not explained', () => {
  it('products are never netted: 3 too many and 3 too few have two causes', () => {
    const made = book();
    const ledger = made.ledger([
      made.movement('delivery', { lines: { honey: 40, jam: 40 } }),
      made.movement('handover', { seller: 'ada', lines: { honey: 14 } }),
      made.movement('handover', { seller: 'ben', lines: { jam: 17 } }),
    ]);
    const answer = explained(ledger, { 'stock:stockroom': { honey: 29, jam: 20 } });
    expect(answer.difference).toEqual({ 'stock:stockroom': { honey: 3, jam: -3 } });
    expect(answer.unexplained).toBe(true);
    for (const { mistakes } of answer.explanations) expect(mistakes).toHaveLength(2);
  });

  it('with nothing to go by it says what to count again', () => {
    const ledger = book().ledger([]);
    const answer = explained(ledger, { 'money:goods': 12_345 });
    expect(answer).toMatchObject({ explanations: [], unexplained: true });
    const shelf = explained(ledger, { 'stock:stockroom': { honey: 1 }, 'money:goods': 5 });
    expect(shelf.decides).toMatchObject({ account: 'stock:stockroom', why: 'count-again' });
  });
});

describe('what the book says besides', () => {
  it('an earlier count that agreed puts the mistake after it', () => {
    const made = book();
    const early = made.movement('handover', {
      seller: 'ada',
      lines: { honey: 21 },
      date: '2027-02-03',
    });
    const late = made.movement('handover', {
      seller: 'ben',
      lines: { honey: 21 },
      date: '2027-02-20',
    });
    const delivery = made.movement('delivery', { lines: { honey: 96 } });
    const count = made.movement('count', { lines: { honey: 75 }, date: '2027-02-10' });
    const seen = { 'stock:stockroom': { honey: 63 } };
    const without = explained(made.ledger([delivery, early, late]), seen).explanations;
    expect(without[0]?.odds).toBeCloseTo(without[1]?.odds ?? 0, 12);
    const { explanations } = explained(made.ledger([delivery, early, late, count]), seen);
    const oddsOf = (id: string) =>
      explanations.find(({ edits: [edit] }) => edit?.op === 'change' && edit.record === id)?.odds;
    expect(explanations[0]?.edits).toMatchObject([{ record: late.id }]);
    expect(oddsOf(early.id) ?? 0).toBeLessThan((oddsOf(late.id) ?? 0) / 10);
  });

  it('what a family ordered decides between two', () => {
    const made = book();
    const order = made.movement('order', { seller: 'ben', lines: { honey: 12 } });
    const ada = made.movement('handover', { seller: 'ada', lines: { honey: 21 } });
    const ben = made.movement('handover', { seller: 'ben', lines: { honey: 21 } });
    const delivery = made.movement('delivery', { lines: { honey: 96 } });
    const ledger = made.ledger([delivery, order, ada, ben]);
    const seen = { 'stock:stockroom': { honey: 63 } };
    expect(firstEdits(ledger, seen)).toMatchObject([{ record: ben.id }]);
  });

  it('gift units that a buyer paid for and nobody recorded', () => {
    const made = book();
    const gifts = { tea: 4 };
    const paid = {
      order: 'O-9',
      seller: 'ada',
      lines: {},
      gifts,
      paid: 2000,
      sent: 'post',
    } as const;
    const ledger = made.ledger([made.movement('online', paid)]);
    const edits = firstEdits(ledger, { 'money:owed:ada': 0 });
    const record = { kind: 'gift', seller: 'ada', order: 'O-9', lines: gifts, from: 'supplier' };
    expect(edits).toMatchObject([{ op: 'add', record }]);
  });

  it('as of a day, a movement that belongs to the other side of it', () => {
    const made = book();
    const delivery = made.movement('delivery', { lines: { honey: 96 } });
    const lines = { honey: 5, jam: 1 };
    const after = made.movement('handover', { seller: 'ada', lines, date: '2027-02-11' });
    const ledger = made.ledger([delivery, after]);
    const seen = { 'stock:stockroom': { honey: 91, jam: -1 } };
    const [first] = explained(ledger, seen, '2027-02-10').explanations;
    expect(first?.edits).toMatchObject([{ record: after.id, fields: { date: '2027-02-10' } }]);
  });
});

describe('facts about every answer', () => {
  const lines = fc.dictionary(
    fc.constantFrom('honey', 'jam', 'tea'),
    fc.integer({ min: 1, max: 30 }),
    {
      minKeys: 1,
    },
  );
  const seller = fc.constantFrom('ada', 'ben', 'cleo');
  const season = fc.array(
    fc.oneof(
      fc.record({ kind: fc.constant('handover' as const), seller, lines }),
      fc.record({ kind: fc.constant('return' as const), seller, lines }),
      fc.record({
        kind: fc.constant('payment' as const),
        seller,
        cents: fc.integer({ min: 1, max: 90 }).map((each) => each * 100),
        tender: fc.constantFrom('cash' as const, 'card' as const),
      }),
    ),
    { minLength: 2, maxLength: 9 },
  );
  const shelf = fc.record({
    honey: fc.integer({ min: 100, max: 140 }),
    jam: fc.integer({ min: 100, max: 140 }),
    tea: fc.integer({ min: 100, max: 140 }),
  });
  const seenOf = fc.record(
    { 'stock:stockroom': shelf, 'money:owed:ada': fc.integer({ min: -9000, max: 30_000 }) },
    { requiredKeys: ['stock:stockroom'] },
  );

  function bookOf(said: readonly { readonly kind: string }[]): BookRecord[] {
    const made = book();
    const records: BookRecord[] = [
      made.movement('delivery', { lines: { honey: 150, jam: 150, tea: 150 } }),
    ];
    for (const each of said) {
      if ('cents' in each) records.push(made.movement('payment', each as never));
      else if (each.kind === 'return') records.push(made.movement('return', each as never));
      else records.push(made.movement('handover', each as never));
    }
    return [...made.setup, ...records];
  }

  it('its edits, written and folded anew, leave nothing over', () => {
    fc.assert(
      fc.property(season, seenOf, (said, seen) => {
        const ledger = Ledger.of(bookOf(said));
        for (const { edits } of explained(ledger, seen).explanations) {
          expect(leftAfter(ledger, edits, seen)).toEqual({});
        }
      }),
      { numRuns: 60 },
    );
  });

  it('an edit that is off by one is caught by the same check', () => {
    const made = book();
    const out = made.movement('handover', { seller: 'ada', lines: { honey: 21 } });
    const ledger = made.ledger([out]);
    const seen = { 'stock:stockroom': { honey: -12 } };
    const change = (honey: number): Edit[] => [
      { op: 'change', record: out.id, fields: { lines: { honey } } },
    ];
    expect(leftAfter(ledger, change(12), seen)).toEqual({});
    expect(leftAfter(ledger, change(13), seen)).not.toEqual({});
  });

  it('the order in which records came makes no difference', () => {
    fc.assert(
      fc.property(season, seenOf, fc.nat(), (said, seen, turn) => {
        const records = bookOf(said);
        const at = turn % records.length;
        const turned = [...records.slice(at), ...records.slice(0, at)].reverse();
        const plain = ({ explanations, ...answer }: Explained) => ({
          ...answer,
          told: explanations.map(({ edits, odds }) => [edits, odds.toPrecision(9)]),
        });
        const one = explained(Ledger.of(records), seen);
        const other = explained(Ledger.of(turned), seen);
        expect(plain(other)).toEqual(plain(one));
      }),
      { numRuns: 40 },
    );
  });

  it('odds add up to at most one, best first', () => {
    fc.assert(
      fc.property(season, seenOf, (said, seen) => {
        const odds = explained(Ledger.of(bookOf(said)), seen).explanations.map((each) => each.odds);
        expect(odds.reduce((sum, each) => sum + each, 0)).toBeLessThanOrEqual(1 + 1e-9);
        expect([...odds].sort((a, b) => b - a)).toEqual(odds);
        expect(odds.length).toBeLessThanOrEqual(10);
      }),
      { numRuns: 40 },
    );
  });
});
