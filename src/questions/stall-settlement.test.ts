import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { countersNotice } from './counters.ts';
import { denominations, tallied } from './denominations.ts';
import { type StallDraft, stallSettlement, stallStandings } from './stall-settlement.ts';

const book = testBook({ honey: 800, jam: 650 }, ['ada', 'ben']);
const ledger = book.ledger([]);
const DAY = '2027-02-01';

/** The worked example of the book specification, section 6 (invented): 3.50 short. */
const example: StallDraft = {
  stall: 'quay',
  date: DAY,
  out: { honey: 10, jam: 6 },
  back: { honey: 3, jam: 1 },
  float: 2000,
  tally: { '2000': 2, '1000': 2, '500': 1 },
  cards: 4000,
  cheques: 0,
};

describe('a settle sheet', () => {
  it('works out the example of the book specification', () => {
    const answer = stallSettlement(ledger, example);
    expect(answer.products.map((one) => [one.product, one.sold, one.value])).toEqual([
      ['honey', 7, 5600],
      ['jam', 5, 3250],
    ]);
    expect([answer.should, answer.cash, answer.have, answer.difference]).toEqual([
      8850, 6500, 8500, -350,
    ]);
  });

  it('adds back cash that was paid out, so that sales are never net of expenses', () => {
    const answer = stallSettlement(ledger, { ...example, paidout: 350 });
    expect(answer.difference).toBe(0);
  });

  it('takes damaged units as neither sold nor back', () => {
    const answer = stallSettlement(ledger, { ...example, damaged: { honey: 1 } });
    expect(answer.products[0]).toMatchObject({ damaged: 1, sold: 6, value: 4800 });
  });

  it('names products of which more came back than went out', () => {
    const answer = stallSettlement(ledger, { ...example, back: { honey: 11, jam: 6 } });
    expect(answer.moreBackThanOut).toEqual(['honey']);
    expect(answer.products[0]?.sold).toBe(-1);
  });

  it('agrees with the postings of the record it becomes', () => {
    fc.assert(
      fc.property(
        fc.record({
          out: fc.nat(50),
          back: fc.nat(50),
          damaged: fc.nat(9),
          float: fc.nat(5000),
          notes: fc.nat(40),
          cards: fc.nat(9000),
          cheques: fc.nat(9000),
          paidout: fc.nat(900),
        }),
        ({ out, back, damaged, notes, ...money }) => {
          const draft = {
            stall: 'quay',
            date: DAY,
            out: { honey: out },
            back: { honey: back },
            damaged: { honey: damaged },
            tally: { '500': notes },
            ...money,
          };
          const answer = stallSettlement(ledger, draft);
          const record = book.movement('stall-close', { ...draft, cash: answer.cash });
          const { balances } = book.ledger([record]);
          expect(answer.difference + balances.moneyOf('overshort')).toBe(0);
          expect(answer.sold).toBe(balances.creditOf('pool:stall:quay', 'honey'));
        },
      ),
      { seed: 3, numRuns: 200 },
    );
  });
});

describe('the state of a stall', () => {
  const close = book.movement('stall-close', { ...example, cash: 6500 });
  const share = book.movement('shareout', {
    pool: 'stall:quay',
    lines: { ada: { honey: 4, jam: 5 }, ben: { honey: 3 } },
  });
  const stateAfter = (records: Parameters<typeof book.ledger>[0], today = DAY) =>
    stallStandings(book.ledger(records), today)[0]?.state;

  it('goes from planned to shared out', () => {
    expect(stateAfter([], '2027-01-31')).toBe('planned');
    expect(stateAfter([])).toBe('not-settled');
    expect(stateAfter([close])).toBe('not-shared');
    expect(stateAfter([close, share])).toBe('shared');
  });

  it('says settled where nothing was sold', () => {
    const none = { ...example, back: example.out, tally: { '2000': 1 }, cards: 0 };
    expect(stateAfter([book.movement('stall-close', { ...none, cash: 2000 })])).toBe('settled');
  });

  it('holds what is not shared yet by product', () => {
    const part = book.movement('shareout', { pool: 'stall:quay', lines: { ada: { honey: 4 } } });
    const standing = stallStandings(book.ledger([close, part]), DAY)[0];
    expect(standing?.notShared).toEqual({ honey: 3, jam: 5 });
    expect(standing?.notSharedUnits).toBe(8);
    expect(standing?.closes.map(({ id }) => id)).toEqual([close.id]);
  });
});

describe('denominations', () => {
  it('are whole minor units, largest first, each once', () => {
    for (const currency of ['USD', 'EUR', 'GBP', 'CAD', 'AUD', 'NZD', 'JPY']) {
      const values = denominations(currency);
      expect(values.length).toBeGreaterThan(7);
      expect(values).toEqual([...new Set(values)].sort((a, b) => b - a));
      expect(values.every((value) => Number.isSafeInteger(value) && value > 0)).toBe(true);
    }
    expect(denominations('XTS')).toEqual([]);
  });

  it('add up to a tally', () => {
    expect(tallied({ '2000': 2, '25': 3, '1': 4 })).toBe(4079);
    expect(tallied({})).toBe(0);
  });
});

describe('two counters', () => {
  const settings = book.setting('family', { family: 'hill', name: 'Sam Hill' });
  const families = book.ledger([settings]);
  it.each([
    ['', '', 'nobody'],
    ['Robin Home', ' ', 'one'],
    ['Robin Home', 'robin  home', 'same-person'],
    ['Robin Home', 'home', 'same-family'],
    ['Alex Home', 'Robin Home', 'same-last-name'],
    ['Robin Home', 'Sam Hill', 'two'],
    ['Ada L.', 'Ben L.', 'two'],
    ['Robin', 'Sam', 'two'],
  ])('%s and %s: %s', (first, second, notice) => {
    expect(countersNotice(families, first, second)).toBe(notice);
  });
});
