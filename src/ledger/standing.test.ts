import { describe, expect, it } from 'vitest';
import type { BookRecord } from '../records/record.ts';
import { Standing } from './standing.ts';
import { testBook } from './test-book.ts';

const { movement, remove } = testBook({ honey: 800 }, ['ada']);
const delivery = movement('delivery', { lines: { honey: 12 } });

function standing(...records: BookRecord[]): Standing {
  const made = new Standing();
  for (const record of records) made.add(record);
  return made;
}

function edit(of: BookRecord, honey: number, at?: string): BookRecord {
  const written = at === undefined ? {} : { at };
  return movement('delivery', { lines: { honey }, replaces: of.id, ...written });
}

describe('which records count', () => {
  it('an edit stands for the record it replaces, and an edit of the edit for both', () => {
    const first = edit(delivery, 21);
    const second = edit(first, 12);
    const made = standing(second, delivery, first);
    expect([delivery, first, second].map((record) => made.counts(record))).toEqual([
      false,
      false,
      true,
    ]);
    expect(made.currentOf(delivery.id)).toBe(second);
  });

  it('removing an edited record does not bring the old one back', () => {
    const edited = edit(delivery, 21);
    const made = standing(delivery, edited, remove(edited.id));
    expect(made.counts(delivery)).toBe(false);
    expect(made.counts(edited)).toBe(false);
    expect(made.currentOf(delivery.id)).toBeUndefined();
  });

  it('removing a removal gives the record back; removing that again takes it away', () => {
    const removal = remove(delivery.id);
    const second = remove(removal.id);
    expect(standing(delivery, removal).counts(delivery)).toBe(false);
    expect(standing(delivery, removal, second).counts(delivery)).toBe(true);
    expect(standing(delivery, removal, second, remove(second.id)).counts(delivery)).toBe(false);
  });

  it('of two edits the later written counts, by id where they are of one moment', () => {
    const at = '2027-03-01T10:00:00.000Z';
    const one = edit(delivery, 10, at);
    const two = edit(delivery, 11, at);
    const [lower, higher] = one.id < two.id ? [one, two] : [two, one];
    for (const order of [
      [one, two],
      [two, one],
    ]) {
      const made = standing(delivery, ...order);
      expect(made.counts(higher)).toBe(true);
      expect(made.counts(lower)).toBe(false);
      expect(made.conflicts()).toEqual([{ on: delivery.id, counts: higher, kept: [lower] }]);
    }
  });

  it('a removal and an edit of one record are a conflict too', () => {
    const edited = edit(delivery, 10, '2027-03-01T10:00:00.000Z');
    const removed = remove(delivery.id, '2027-03-01T11:00:00.000Z');
    const made = standing(delivery, edited, removed);
    expect(made.counts(edited)).toBe(false);
    expect(made.currentOf(delivery.id)).toBeUndefined();
    expect(made.conflicts()[0]?.kept).toEqual([edited]);
  });

  it('a conflict is settled by removing the other version', () => {
    const lower = edit(delivery, 10, '2027-03-01T10:00:00.000Z');
    const higher = edit(delivery, 11, '2027-03-02T10:00:00.000Z');
    const made = standing(delivery, lower, higher, remove(lower.id));
    expect(made.conflicts()).toEqual([]);
    expect(made.counts(higher)).toBe(true);
  });

  it('removals in a ring end, and all of them stay in force', () => {
    const one = remove(delivery.id);
    const two = { ...remove(one.id) };
    const three = { ...remove(two.id) };
    const ring = { ...two, voids: three.id };
    const made = standing(delivery, one, ring, three);
    expect(made.counts(one)).toBe(true);
    expect(made.counts(ring)).toBe(false);
    expect(made.counts(three)).toBe(false);
  });

  it('an edit whose original is not here yet counts', () => {
    expect(standing(edit(delivery, 10)).currentOf(delivery.id)).toBeUndefined();
    const alone = edit(delivery, 10);
    expect(standing(alone).counts(alone)).toBe(true);
  });
});
