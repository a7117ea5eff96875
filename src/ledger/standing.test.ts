import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BookRecord } from '../records/record.ts';
import { Standing } from './standing.ts';
import { testBook } from './test-book.ts';

const book = testBook({ honey: 800 }, ['ada', 'ben']);
const paid = (cents: number, replaces?: string) =>
  book.movement('payment', {
    seller: 'ada',
    tender: 'cash',
    cents,
    ...(replaces === undefined ? {} : { replaces }),
  });

/** Minor units of the payments that count, in any order of arrival. */
function counting(records: readonly BookRecord[]): number[] {
  const standing = new Standing();
  for (const record of records) standing.add(record);
  return records
    .filter((record) => record.kind === 'payment' && standing.counts(record))
    .map((record) => (record.kind === 'payment' ? record.cents : 0));
}

describe('which records count', () => {
  it('an edit stands for the record it replaces, and an edit of the edit for that', () => {
    const first = paid(100);
    const second = paid(200, first.id);
    const third = paid(300, second.id);
    expect(counting([first])).toEqual([100]);
    expect(counting([third, first, second])).toEqual([300]);
  });

  it('a removal takes a record away, and a removal of the removal brings it back', () => {
    const first = paid(100);
    const removal = book.remove(first.id);
    expect(counting([first, removal])).toEqual([]);
    expect(counting([book.remove(removal.id), first, removal])).toEqual([100]);
  });

  it('removing an edit does not bring the old record back', () => {
    const first = paid(100);
    const edit = paid(200, first.id);
    expect(counting([first, edit, book.remove(edit.id)])).toEqual([]);
  });

  it('of two claims on one record the later counts, and the other is a conflict', () => {
    const first = paid(100);
    const one = paid(200, first.id);
    const other = paid(300, first.id);
    expect(counting([other, first, one])).toEqual([300]);
  });

  it('a claim that lost does not count again through its own edits', () => {
    const first = paid(100);
    const lost = paid(200, first.id);
    const won = paid(300, first.id);
    const lostAgain = paid(400, lost.id);
    expect(counting([first, lost, won, lostAgain])).toEqual([300]);
  });

  it('an id stands for what counts today, whichever claim it named', () => {
    const first = paid(100);
    const lost = paid(200, first.id);
    const won = paid(300, first.id);
    const standing = new Standing();
    for (const record of [lost, won, first]) standing.add(record);
    for (const record of [first, lost, won]) expect(standing.currentOf(record.id)).toBe(won);
    expect(standing.conflicts()).toEqual([{ on: first.id, counts: won, kept: [lost] }]);
    const lostAgain = paid(400, lost.id);
    standing.add(lostAgain);
    expect(standing.conflicts()).toHaveLength(1);
    standing.add(book.remove(lostAgain.id));
    expect(standing.conflicts()).toEqual([]);
  });
});

describe('any web of claims, rings and dangling ids among them', () => {
  /** Each number says what the record claims: none, one of the others, itself, or an unknown id. */
  const webs = fc.array(fc.tuple(fc.integer({ min: -4, max: 8 }), fc.boolean(), fc.boolean()), {
    minLength: 1,
    maxLength: 8,
  });

  function webOf(claims: readonly (readonly [number, boolean, boolean])[]): BookRecord[] {
    const plain = claims.map(([, , isLate], index) => ({
      ...paid(index + 1),
      at: isLate ? '2027-03-02T00:00:00.000Z' : '2027-03-01T00:00:00.000Z',
    }));
    return plain.map((record, index): BookRecord => {
      const [claimed, isRemoval] = claims[index] ?? [-1, false];
      if (claimed < 0) return record;
      const target = plain[claimed]?.id ?? '0195f3c2-7d1a-7c3e-9a41-1f0c6e2b9d10';
      return isRemoval
        ? { ...book.remove(target, record.at), id: record.id }
        : { ...record, replaces: target };
    });
  }

  it('lets the same records count in every order of arrival', () => {
    fc.assert(
      fc.property(webs, fc.infiniteStream(fc.nat()), (claims, order) => {
        const web = webOf(claims);
        const shuffled = web
          .map((record) => ({ record, at: order.next().value }))
          .sort((a, b) => a.at - b.at)
          .map(({ record }) => record);
        expect(counting(shuffled).sort()).toEqual(counting(web).sort());
      }),
      { numRuns: 300 },
    );
  });

  it('names all at once the records that do not count', () => {
    fc.assert(
      fc.property(webs, (claims) => {
        const standing = new Standing();
        const web = webOf(claims);
        for (const record of web) {
          standing.add(record);
          const known = standing.records();
          const overruled = known.filter((one) => !standing.counts(one));
          expect(new Set(standing.overruled())).toEqual(new Set(overruled));
        }
      }),
      { numRuns: 200 },
    );
  });

  it('lets at most one record count for each first writing', () => {
    fc.assert(
      fc.property(webs, (claims) => {
        const web = webOf(claims);
        const known = new Set(web.map((record) => record.id));
        const firsts = web.filter((record) => {
          const target = record.kind === 'void' ? record.voids : record.replaces;
          return target === undefined || !known.has(target);
        });
        expect(counting(web).length).toBeLessThanOrEqual(firsts.length);
      }),
      { numRuns: 300 },
    );
  });
});
