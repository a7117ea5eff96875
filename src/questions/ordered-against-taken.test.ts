import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { orderedAgainstTaken, sellersOf } from './ordered-against-taken.ts';

const book = testBook({ honey: 800, jam: 650, tea: 500 }, ['ada', 'ben']);
const order = book.movement('order', {
  seller: 'ada',
  lines: { honey: 10, jam: 4 },
  gifts: { honey: 2 },
  paid: 6000,
});
const online = book.movement('online', {
  order: 'w-1',
  seller: 'ada',
  lines: { honey: 3 },
  gifts: { jam: 1 },
  paid: 3050,
  sent: 'hand',
});
const taken = book.movement('handover', { seller: 'ada', lines: { honey: 9, jam: 6, tea: 2 } });
const back = book.movement('return', { seller: 'ada', lines: { tea: 2 } });
const passed = book.movement('pass', { from: 'ada', to: 'ben', lines: { honey: 1 } });
const given = book.movement('gift', { seller: 'ada', lines: { honey: 2 }, from: 'stockroom' });
const ledger = book.ledger([order, online, taken, back, passed, given]);

describe('ordered against taken', () => {
  it('adds up one seller product by product', () => {
    const ada = orderedAgainstTaken(ledger, ['ada']);
    expect(ada.lines.map((one) => ({ ...one, records: one.records.length }))).toEqual([
      {
        product: 'honey',
        ordered: 10,
        online: 3,
        taken: 8,
        toHandOver: 5,
        beyondOrders: 0,
        giftsOrdered: 2,
        giftsRecorded: 2,
        records: 5,
      },
      {
        product: 'jam',
        ordered: 4,
        online: 0,
        taken: 6,
        toHandOver: 0,
        beyondOrders: 2,
        giftsOrdered: 1,
        giftsRecorded: 0,
        records: 3,
      },
      {
        product: 'tea',
        ordered: 0,
        online: 0,
        taken: 0,
        toHandOver: 0,
        beyondOrders: 0,
        giftsOrdered: 0,
        giftsRecorded: 0,
        records: 2,
      },
    ]);
    expect([ada.toHandOver, ada.giftsToRecord, ada.paidWithForms]).toEqual([5, 1, 6000]);
  });

  it('cancels what passes between sellers of the same family', () => {
    const family = orderedAgainstTaken(ledger, sellersOf(ledger, 'home'));
    expect(family.lines[0]?.taken).toBe(9);
    expect(family.toHandOver).toBe(4);
    expect(family.records).toEqual([order, online, taken, back, passed, given].map((r) => r.id));
  });

  it('takes units that the supplier posts to the buyer as nothing to hand over', () => {
    const posted = book.movement('online', {
      order: 'w-2',
      seller: 'ben',
      lines: { tea: 4 },
      paid: 2000,
      sent: 'post',
    });
    expect(orderedAgainstTaken(book.ledger([posted]), ['ben']).lines).toEqual([]);
  });

  it('counts an edit in place of what it replaces', () => {
    const edit = book.movement('order', { seller: 'ada', lines: { jam: 1 }, replaces: order.id });
    const ada = orderedAgainstTaken(book.ledger([order, edit]), ['ada']);
    expect(ada.lines.map((one) => [one.product, one.ordered])).toEqual([['jam', 1]]);
    expect(ada.paidWithForms).toBe(0);
  });
});
