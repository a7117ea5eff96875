import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalText } from '../src/base/canonical-text.ts';
import { seeded } from '../src/base/seeded.ts';
import { Balances } from '../src/ledger/balances.ts';
import { Ledger } from '../src/ledger/ledger.ts';
import { type BookRecord, isMovement } from '../src/records/record.ts';
import { refusingFindings } from '../src/rules/check-book.ts';
import { audit } from './auditor.ts';
import {
  brokenFact,
  whatCreditIsMissing,
  whatDoesNotSumToZero,
  whatGoodsIsOffBy,
} from './facts.ts';
import { makeSeason, smallSeason } from './season-maker.ts';

/**
 * What must hold over made seasons. Under each property stands its teeth: a fold that is wrong on
 * purpose, which the same property must catch. A failure prints the season's seed and length.
 */

const SEEDS = 200;
const RUNS = { numRuns: 60 };

interface MadeSeason {
  readonly seed: number;
  readonly records: readonly BookRecord[];
}

/** A made season, or the beginning of one: a failure shrinks to the shortest beginning. */
const seasons: fc.Arbitrary<MadeSeason> = fc
  .record({ seed: fc.nat(100_000), share: fc.integer({ min: 5, max: 100 }) })
  .map(({ seed, share }) => {
    const records = makeSeason(seed);
    return { seed, records: records.slice(0, Math.ceil((records.length * share) / 100)) };
  });

function balancesOf(records: readonly BookRecord[]) {
  return Ledger.of(records).balances.toAccounts();
}

/** Runs a property against a wrong fold; true where it was caught within the usual runs. */
function isCaught(fold: (season: MadeSeason) => boolean): boolean {
  return fc.check(fc.property(seasons, fold), RUNS).failed;
}

describe('the facts that always hold', () => {
  it('hold at the end of a season and on any day of it', () => {
    fc.assert(
      fc.property(seasons, fc.nat(), ({ records }, pick) => {
        const ledger = Ledger.of(records);
        const days = ledger.movements().map((movement) => movement.date);
        expect(brokenFact(ledger)).toBeUndefined();
        expect(brokenFact(ledger, days[pick % (days.length || 1)])).toBeUndefined();
      }),
      RUNS,
    );
  });

  it('teeth: an account left out does not sum to zero', () => {
    const { bank: _bank, ...money } = balancesOf(makeSeason(1)).money;
    expect(whatDoesNotSumToZero({ ...balancesOf(makeSeason(1)), money })).toMatch(/^money sums/);
  });

  it('teeth: postings without revaluation leave goods wrong', () => {
    const unrevalued = ({ records }: MadeSeason): boolean => {
      const ledger = Ledger.of(records);
      const balances = new Balances();
      for (const movement of ledger.movements()) ledger.postingsTo(movement, balances);
      const price = (product: string) => ledger.priceOn(product);
      return whatGoodsIsOffBy(balances.toAccounts(), price) === undefined;
    };
    expect(isCaught(unrevalued)).toBe(true);
  });

  it('teeth: credit that reaches nobody is missing', () => {
    const { credit, ...rest } = balancesOf(makeSeason(1));
    const [product, accounts] = Object.entries(credit)[0] ?? ['', {}];
    const lost = { ...rest, credit: { [product]: { ...accounts, issued: -100_000 } } };
    expect(whatCreditIsMissing(lost)).toMatch(/issued 100000/);
  });
});

describe('the order of arrival', () => {
  const shuffledLike =
    (fold: (records: readonly BookRecord[]) => unknown) =>
    ({ seed, records }: MadeSeason): boolean => {
      const shuffled = seeded(seed + 1).shuffle(records);
      return JSON.stringify(fold(shuffled)) === JSON.stringify(fold(records));
    };

  it('does not matter', () => {
    fc.assert(fc.property(seasons, shuffledLike(balancesOf)), RUNS);
  });

  it('teeth: letting the last to arrive win a conflict is caught', () => {
    const lastArrivalWins = (records: readonly BookRecord[]): unknown => {
      const last = new Map(records.map((record) => [record.replaces ?? record.id, record]));
      const kept = records.filter(
        (record) => record.replaces === undefined || last.get(record.replaces) === record,
      );
      return balancesOf(kept);
    };
    expect(isCaught(shuffledLike(lastArrivalWins))).toBe(true);
  });
});

describe('two copies of a book', () => {
  /** Each copy lacks some of the records; together they have all, many of them twice. */
  function copiesOf({ seed, records }: MadeSeason): [BookRecord[], BookRecord[]] {
    const random = seeded(seed + 2);
    const holders = records.map(() => random.whole(1, 3));
    return [
      records.filter((_, index) => holders[index] !== 2),
      records.filter((_, index) => holders[index] !== 1),
    ];
  }

  it('merge to the same balances whichever takes the other in', () => {
    fc.assert(
      fc.property(seasons, (season) => {
        const [one, other] = copiesOf(season);
        const whole = balancesOf(season.records);
        expect(balancesOf([...one, ...other])).toEqual(whole);
        expect(balancesOf([...other, ...one])).toEqual(whole);
        const taking = Ledger.of(other);
        for (const record of one) taking.add(record);
        expect(taking.balances.toAccounts()).toEqual(whole);
      }),
      RUNS,
    );
  });

  it('teeth: a merge that keeps a record twice, or only one copy, is caught', () => {
    const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);
    const onlyOne = (season: MadeSeason): boolean =>
      same(balancesOf(copiesOf(season)[0]), balancesOf(season.records));
    const twice = (season: MadeSeason): boolean => {
      const balances = new Balances();
      for (const copy of copiesOf(season)) {
        const ledger = Ledger.of(copy);
        for (const movement of ledger.movements()) ledger.postingsTo(movement, balances);
      }
      return same(balances.toAccounts(), balancesOf(season.records));
    };
    expect([isCaught(onlyOne), isCaught(twice)]).toEqual([true, true]);
  });
});

describe('a book of many devices', () => {
  it('is never refused for what they did without knowing of each other', () => {
    fc.assert(
      fc.property(seasons, ({ records }) => {
        const found = refusingFindings({ ledger: Ledger.of(records), records }).inOrder();
        expect(found.filter((finding) => finding.severity === 'error')).toEqual([]);
      }),
      RUNS,
    );
  });

  it('teeth: a record about somebody who is not there is refused', () => {
    const records = makeSeason(1).filter((record) => record.kind !== 'seller');
    const found = refusingFindings({ ledger: Ledger.of(records), records }).inOrder();
    expect(found.some((finding) => finding.severity === 'error')).toBe(true);
  });
});

describe('adding record by record', () => {
  it('gives at every step what folding afresh gives, in any order', () => {
    fc.assert(
      fc.property(seasons, ({ seed, records }) => {
        const shuffled = seeded(seed + 3).shuffle(records);
        const growing = Ledger.of([]);
        const step = Math.ceil(shuffled.length / 12);
        shuffled.forEach((record, index) => {
          expect(growing.add(record)).toBe('added');
          if (index % step !== 0 && index !== shuffled.length - 1) return;
          const fresh = Ledger.of(shuffled.slice(0, index + 1));
          expect(growing.balances.toAccounts()).toEqual(fresh.balances.toAccounts());
          expect(growing.movements()).toEqual(fresh.movements());
          expect(growing.setup).toEqual(fresh.setup);
        });
      }),
      RUNS,
    );
  });

  it('changes nothing for a record that is there, and names one with other content', () => {
    const records = makeSeason(5);
    const ledger = Ledger.of(records);
    const before = ledger.balances.toAccounts();
    for (const record of records) expect(ledger.add({ ...record })).toBe('already');
    const forged = records.filter(isMovement).map((record) => ({ ...record, note: 'forged' }));
    for (const record of forged) expect(ledger.add(record)).toBe('same_id_with_other_content');
    expect(ledger.balances.toAccounts()).toEqual(before);
  });

  it('teeth: posting each record once as it comes, and never again, is caught', () => {
    const postedOnce = ({ records }: MadeSeason): boolean => {
      const ledger = Ledger.of([]);
      const balances = new Balances();
      for (const record of records) {
        ledger.add(record);
        if (isMovement(record)) ledger.postingsTo(record, balances);
      }
      return JSON.stringify(balances.toAccounts()) === JSON.stringify(balancesOf(records));
    };
    expect(isCaught(postedOnce)).toBe(true);
  });
});

describe('balances as of a day', () => {
  const calm = { ...smallSeason, changesPercent: 0 };

  /** A season in which nothing is edited and no price changes: days can be cut off by hand. */
  function calmRecords(seed: number): BookRecord[] {
    return makeSeason(seed, calm).filter(
      (record) =>
        record.kind !== 'void' &&
        record.replaces === undefined &&
        (record.kind !== 'product' || record.from === undefined),
    );
  }

  const cutOff =
    (records: readonly BookRecord[], dayOf: (record: BookRecord) => string) => (day: string) =>
      balancesOf(records.filter((record) => !isMovement(record) || dayOf(record) <= day));

  it('are the fold of what happened up to it', () => {
    fc.assert(
      fc.property(fc.nat(100_000), fc.nat(70), (seed, pick) => {
        const records = calmRecords(seed);
        const ledger = Ledger.of(records);
        const days = ledger.movements().map((movement) => movement.date);
        const day = days[pick % days.length] ?? '';
        const byDate = cutOff(records, (record) => (isMovement(record) ? record.date : ''));
        expect(ledger.asOf(day).toAccounts()).toEqual(byDate(day));
      }),
      RUNS,
    );
  });

  it('teeth: cutting off by when records were written is caught', () => {
    const found = Array.from({ length: 20 }, (_, seed) => calmRecords(seed)).some((records) => {
      const ledger = Ledger.of(records);
      const byWritten = cutOff(records, (record) => record.at.slice(0, 10));
      return ledger
        .movements()
        .some(
          ({ date }) =>
            JSON.stringify(ledger.asOf(date).toAccounts()) !== JSON.stringify(byWritten(date)),
        );
    });
    expect(found).toBe(true);
  });
});

describe('the ledger and the auditor', () => {
  const agreeOn = (seed: number): void => {
    const records = makeSeason(seed);
    const ledger = Ledger.of(records);
    expect(ledger.balances.toAccounts(), `seed ${seed}`).toEqual(audit(records));
    const days = ledger.movements().map((movement) => movement.date);
    const day = days[seed % days.length] ?? '';
    expect(ledger.asOf(day).toAccounts(), `seed ${seed}, ${day}`).toEqual(audit(records, day));
  };

  it(`agree on ${SEEDS} seasons, at the end and on a day of each`, () => {
    for (let seed = 0; seed < SEEDS; seed += 1) agreeOn(seed);
  });

  const faults: Readonly<Record<string, (record: BookRecord) => BookRecord | undefined>> = {
    'removals ignored': (record) => (record.kind === 'void' ? undefined : record),
    'edits counted on top': ({ replaces: _replaces, ...record }) => record,
    'later prices ignored': (record) =>
      record.kind === 'product' && record.from !== undefined ? undefined : record,
    'one unit more on each return': (record) =>
      record.kind === 'return'
        ? {
            ...record,
            lines: Object.fromEntries(Object.entries(record.lines).map(([id, n]) => [id, n + 1])),
          }
        : record,
    'bank fee of a bounce forgotten': ({ ...record }) =>
      record.kind === 'bounced' ? { ...record, fee: 0 } : record,
    'damaged units forgotten': (record) =>
      record.kind === 'stall-close' ? { ...record, damaged: {} } : record,
    'clocks trusted over ids': (record) =>
      record.replaces === undefined ? record : { ...record, at: '2027-02-01T00:00:00.000Z' },
  };

  it.each(Object.keys(faults))('teeth: %s is caught', (name) => {
    const fault = faults[name];
    const isSeen = Array.from({ length: 40 }, (_, seed) => makeSeason(seed)).some((records) => {
      const wrong = records
        .map((record) => fault?.(record))
        .filter((record) => record !== undefined);
      return canonicalText(balancesOf(wrong)) !== canonicalText(audit(records));
    });
    expect(isSeen).toBe(true);
  });
});
