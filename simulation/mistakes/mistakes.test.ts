import { describe, expect, it } from 'vitest';
import { uuid7 } from '../../src/base/id.ts';
import { Ledger } from '../../src/ledger/ledger.ts';
import { type Edit, recordsOfEdits } from '../../src/questions/explain/edits.ts';
import type { BookRecord } from '../../src/records/record.ts';
import { mayAppend } from '../../src/rules/may-append.ts';
import { audit } from '../auditor.ts';
import { makeSeason } from '../season-maker.ts';
import { measurePairs, measureSingles, type Outcome } from './measure.ts';
import { trueSeason } from './true-season.ts';

/** A small part of what tools/measure-mistakes.ts measures over many seasons. */
const SEEDS = [9001, 9002, 9003];

function* writer(): Generator<{ id: string; at: string; by: string }, never> {
  for (let written = 1; ; written += 1) {
    const ms = Date.UTC(2028, 0, 1) + written;
    yield { id: uuid7(ms, new Uint8Array(10)), at: new Date(ms).toISOString(), by: 'manager' };
  }
}

function mendsOf(book: Ledger, edits: readonly Edit[]): BookRecord[] {
  const written = writer();
  return recordsOfEdits(edits, book, () => written.next().value);
}

/** What the auditor, who shares no code with the ledger, still finds other than what was seen. */
function leftByAuditor({ book, observed }: Outcome, mends: readonly BookRecord[]): string[] {
  const { stock, money, credit } = audit([...book.standing.records(), ...mends]);
  return observed.flatMap(({ ledger, account, amounts }) => {
    if (ledger === 'money') {
      const off = (money[account] ?? 0) - (amounts.get('') ?? 0);
      return off === 0 ? [] : [`${account} ${off}`];
    }
    const goods = ledger === 'stock' ? stock : credit;
    const products = new Set([...Object.keys(goods), ...amounts.keys()]);
    return [...products].flatMap((product) => {
      const off = (goods[product]?.[account] ?? 0) - (amounts.get(product) ?? 0);
      return off === 0 ? [] : [`${account} ${product} ${off}`];
    });
  });
}

const singles = SEEDS.flatMap((seed) => [...measureSingles(seed)]);
const pairs = SEEDS.flatMap((seed) => [...measurePairs(seed, 6)]).filter(({ isShown }) => isShown);

function part(outcomes: readonly Outcome[], is: (outcome: Outcome) => boolean): number {
  return outcomes.filter(is).length / Math.max(1, outcomes.length);
}

describe('one mistake in a season', () => {
  const seen = singles.filter(({ level }) => level !== 'count');

  it('is planted in many ways', () => {
    expect(new Set(singles.map(({ sort }) => sort)).size).toBeGreaterThanOrEqual(40);
  });

  it('is named first where everybody concerned was asked', () => {
    expect(part(seen, ({ place }) => place === 1)).toBeGreaterThanOrEqual(0.95);
    expect(part(seen, ({ place }) => place >= 1 && place <= 3)).toBeGreaterThanOrEqual(0.99);
  });

  it('is not called inexplicable', () => {
    expect(part(singles, ({ explained }) => explained.unexplained)).toBeLessThanOrEqual(0.01);
  });
});

describe('two mistakes at once', () => {
  const seen = pairs.filter(({ level }) => level !== 'count');

  it('are among the first three, and nothing single is claimed', () => {
    expect(part(seen, ({ place }) => place >= 1 && place <= 3)).toBeGreaterThanOrEqual(0.8);
  });
});

describe('every explanation', () => {
  it('leaves nothing over by the auditor, and passes the rules for new records', () => {
    let looked = 0;
    for (const outcome of [...singles, ...pairs].filter((_, at) => at % 9 === 0)) {
      for (const { edits } of outcome.explained.explanations.slice(0, 4)) {
        const mends = mendsOf(outcome.book, edits);
        expect(leftByAuditor(outcome, mends)).toEqual([]);
        const copy = Ledger.of(outcome.book.standing.records());
        for (const mend of mends) {
          expect(mayAppend(copy, mend, { isReadyToClose: () => false })).toBeUndefined();
          copy.add(mend);
        }
        looked += 1;
      }
    }
    expect(looked).toBeGreaterThan(50);
  });

  it('the auditor would see an edit that is off by one', () => {
    const outcome = singles.find(({ explained: { explanations } }) => {
      const [edit] = explanations[0]?.edits ?? [];
      return edit?.op === 'change' && typeof edit.fields.cents === 'number';
    });
    const [edit] = outcome?.explained.explanations[0]?.edits ?? [];
    if (outcome === undefined || edit?.op !== 'change')
      throw new Error('no payment was keyed wrongly');
    const off = { ...edit, fields: { ...edit.fields, cents: Number(edit.fields.cents) + 1 } };
    expect(leftByAuditor(outcome, mendsOf(outcome.book, [off]))).not.toEqual([]);
  });
});

describe('a season without a mistake', () => {
  it('is the same for the same seed, and the auditor agrees with its balances', () => {
    expect(trueSeason(7)).toEqual(trueSeason(7));
    const records = trueSeason(7);
    expect(audit(records)).toEqual(Ledger.of(records).balances.toAccounts());
  });

  it('mistakes are found in a season of edits, removals and new prices too', () => {
    const sorts = ['payment: digits swapped', 'goods out: wrong seller', 'swap: missing'];
    const found = [4, 5, 6].flatMap((seed) => [...measureSingles(seed, sorts, makeSeason(seed))]);
    const told = found.filter(({ level }) => level === 'everything');
    expect(told.length).toBeGreaterThan(5);
    expect(part(told, ({ place }) => place >= 1 && place <= 3)).toBeGreaterThanOrEqual(0.9);
  });
});
