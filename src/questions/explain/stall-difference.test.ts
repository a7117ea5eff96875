import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import type { RecordOf } from '../../records/record.ts';
import { explain } from './explain.ts';
import { observedIn, stallsIn } from './seen.ts';

const made = testBook({ honey: 800, jam: 650 }, ['ada']);
const pier = made.setting('stall', {
  stall: 'pier',
  host: 'market',
  starts: '2027-02-06T09:00',
  ends: '2027-02-06T12:00',
  shifts: [],
});
const delivery = made.movement('delivery', { lines: { honey: 96, jam: 60 } });
const DAY = '2027-03-01';

type Says = Partial<Omit<RecordOf<'stall-close'>, 'kind'>>;

/** Sold 7 honey and 5 jam: 8850, in cash, with a float of 2000. */
function settled(stall: string, says: Says = {}) {
  const usual = { out: { honey: 10, jam: 6 }, back: { honey: 3, jam: 1 }, float: 2000 };
  const money = { cash: 10_850, cards: 0, cheques: 0 };
  return made.movement('stall-close', { stall, ...usual, ...money, ...says });
}

function why(closes: readonly RecordOf<'stall-close'>[], stall = 'quay', minor = 0) {
  const ledger = made.ledger([pier, delivery, ...closes]);
  const seen = [{ place: `stall:${stall}`, units: {}, minor }];
  const observed = observedIn(ledger, seen, DAY);
  return explain(ledger, observed, { day: DAY, stalls: stallsIn(ledger, seen) });
}

describe('a stall that is short or over', () => {
  it('agrees where its money does, or is over by what was expected', () => {
    expect(why([settled('quay')]).explanations).toEqual([]);
    expect(why([settled('quay', { cash: 10_900 })], 'quay', 50).difference).toEqual({});
  });

  it('names its own numbers alone, not those of another stall', () => {
    const close = settled('quay', { cash: 10_580 });
    const other = settled('pier', { cash: 12_580, cards: 270 });
    const { difference, explanations } = why([close, other]);
    expect(difference).toEqual({ 'money:overshort': -270 });
    const edits = explanations.flatMap((each) => each.edits);
    expect(edits[0]).toEqual({ op: 'change', record: close.id, fields: { cash: 10_850 } });
    const about = edits.map((edit) => ('record' in edit ? edit.record : ''));
    expect(new Set(about)).toEqual(new Set([close.id]));
  });

  it('knows a float left in, a product that came back unwritten, a note miscounted', () => {
    const first = (says: Says) =>
      why([settled('quay', says)]).explanations.map(({ edits }) => edits[0]);
    expect(first({ cash: 8850 })[0]).toMatchObject({ fields: { cash: 10_850 } });
    const back = { back: { honey: 3 } };
    expect(first(back)).toContainEqual(
      expect.objectContaining({ fields: { back: { honey: 3, jam: 1 } } }),
    );
    expect(first({ cash: 10_350 })).toContainEqual(
      expect.objectContaining({ fields: { cash: 10_850 } }),
    );
    expect(first({ cash: 10_350 })).toContainEqual(
      expect.objectContaining({ fields: { paidout: 500 } }),
    );
  });

  it('is not explained by another stall even where only that one fits', () => {
    const close = settled('quay', { cash: 10_850 - 137 });
    const other = settled('pier', { cash: 10_850 + 137 });
    const about = (found: ReturnType<typeof why>) =>
      found.explanations.flatMap(({ edits }) =>
        edits.map((edit) => ('record' in edit ? edit.record : '')),
      );
    expect(about(why([close, other]))).not.toContain(other.id);
    const ledger = made.ledger([pier, delivery, close, other]);
    const seen = [{ place: 'stall:quay', units: {}, minor: 0 }];
    // Without the stall's name the other one does come up: the test would see it.
    const loose = explain(ledger, observedIn(ledger, seen, DAY), { day: DAY });
    expect(about(loose)).toContain(other.id);
  });
});
