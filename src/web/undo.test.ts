import { describe, expect, it, test } from 'vitest';
import { Ledger } from '../ledger/ledger.ts';
import { testBook } from '../ledger/test-book.ts';
import type { BookRecord } from '../records/record.ts';
import { mayAppend } from '../rules/may-append.ts';
import type { Draft } from './book.ts';
import { settleDrafts } from './settle-conflict.ts';
import { undoDraft } from './undo.ts';

const book = testBook({ honey: 800 }, ['ada']);
const out = book.movement('handover', { seller: 'ada', lines: { honey: 5 } });

let written = 0;
/** Stamps a draft as a device would. */
function stamped(draft: Draft): BookRecord {
  written += 1;
  const id = `0195f3c2-7d1a-7c3e-9a41-${String(written).padStart(12, '0')}`;
  const at = new Date(Date.UTC(2027, 5, 1) + written).toISOString();
  return { id, at, by: 'manager', ...draft } as BookRecord;
}

function withAda(records: readonly BookRecord[]): number {
  return book.ledger(records).balances.stockOf('seller:ada', 'honey');
}

function edited(honey: number, at: string): BookRecord {
  return book.movement('handover', { seller: 'ada', lines: { honey }, replaces: out.id, at });
}

test('undo of an added record removes it', () => {
  const undone = stamped(undoDraft(book.ledger([out]), out));
  expect(undone).toMatchObject({ kind: 'void', voids: out.id });
  expect(withAda([out, undone])).toBe(0);
});

test('undo of an edit brings the earlier content back as one more edit', () => {
  const edit = edited(7, '2027-03-01T00:00:00.000Z');
  const undone = stamped(undoDraft(book.ledger([out, edit]), edit));
  expect(undone).toMatchObject({ kind: 'handover', replaces: edit.id, lines: { honey: 5 } });
  expect(withAda([out, edit, undone])).toBe(5);
});

test('undo of a removal removes the removal, so that the record stands under its own id', () => {
  const removal = book.remove(out.id);
  const undone = stamped(undoDraft(book.ledger([out, removal]), removal));
  expect(undone).toMatchObject({ kind: 'void', voids: removal.id });
  const { standing } = book.ledger([out, removal, undone]);
  expect(standing.currentOf(out.id)).toBe(out);
  expect(withAda([out, removal, undone])).toBe(5);
});

test('an undo can be undone, over and over, and the server takes each', () => {
  const written: BookRecord[] = [...book.setup, out];
  let last: BookRecord = out;
  for (let time = 0; time < 20; time += 1) {
    const ledger = Ledger.of(written);
    const undone = stamped(undoDraft(ledger, last));
    expect(mayAppend(ledger, undone, { isReadyToClose: () => false })).toBe(undefined);
    written.push(undone);
    last = undone;
    expect(withAda(written.slice(book.setup.length))).toBe(time % 2 === 0 ? 0 : 5);
  }
});

describe('a bounced cheque finds its payment', () => {
  const cheque = book.movement('payment', { seller: 'ada', cents: 4000, tender: 'cheque' });
  const bounce = book.movement('bounced', { payment: cheque.id });
  const owed = (records: readonly BookRecord[]) =>
    book.ledger([cheque, bounce, ...records]).balances.moneyOf('owed:ada');

  it('after its removal was undone', () => {
    const removal = book.remove(cheque.id);
    const undone = stamped(undoDraft(book.ledger([cheque, bounce, removal]), removal));
    expect(owed([removal])).toBe(0);
    expect(owed([removal, undone])).toBe(0);
    expect(book.ledger([cheque, bounce, removal, undone]).balances.moneyOf('bank')).toBe(-4000);
  });

  it('after its edit was undone', () => {
    const edit = book.movement('payment', {
      seller: 'ada',
      cents: 400,
      tender: 'cheque',
      replaces: cheque.id,
    });
    const undone = stamped(undoDraft(book.ledger([cheque, bounce, edit]), edit));
    expect(book.ledger([cheque, bounce, edit]).balances.moneyOf('bank')).toBe(-400);
    expect(book.ledger([cheque, bounce, edit, undone]).balances.moneyOf('bank')).toBe(-4000);
  });
});

const early = edited(6, '2027-03-01T00:00:00.000Z');
const late = edited(8, '2027-03-02T00:00:00.000Z');
const earlyRemoval = book.remove(out.id, '2027-03-01T00:00:00.000Z');
const lateRemoval = book.remove(out.id, '2027-03-03T00:00:00.000Z');

test.each<[string, BookRecord, BookRecord, 'counts' | 'kept', number]>([
  ['keep the later of two edits', late, early, 'counts', 8],
  ['keep the earlier of two edits', late, early, 'kept', 6],
  ['keep a later removal', lateRemoval, early, 'counts', 0],
  ['keep the edit before a later removal', lateRemoval, early, 'kept', 6],
  ['keep a later edit', late, earlyRemoval, 'counts', 8],
  ['keep the removal before a later edit', late, earlyRemoval, 'kept', 0],
])('%s: it stands alone and nothing is left to choose', (_what, counts, kept, chosen, units) => {
  const before = [out, counts, kept];
  expect(book.ledger(before).standing.conflicts()).toHaveLength(1);
  const drafts = settleDrafts(counts, [kept], chosen === 'counts' ? counts : kept);
  const settled = [...before, ...drafts.map(stamped)];
  expect(withAda(settled)).toBe(units);
  expect(book.ledger(settled).standing.conflicts()).toEqual([]);
});
