import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import type { BookRecord } from '../records/record.ts';
import { closingWords } from '../statements/closing-words.ts';
import { english } from '../words/english.ts';
import type { ClosingItem } from './closing/closing-item.ts';
import { closingList } from './closing-list.ts';

const TODAY = '2027-04-20';
const book = testBook({ honey: 800, jam: 650 }, ['ada', 'ben']);
const { movement, setting } = book;
const stallId = book.setup.find((record) => record.kind === 'stall')?.id ?? '';
const noStall = book.remove(stallId);

function list(records: readonly BookRecord[]): ReturnType<typeof closingList> {
  return closingList(book.ledger([noStall, ...records]), TODAY);
}

function item(records: readonly BookRecord[], name: string): ClosingItem {
  const found = list(records).items.find((one) => one.item === name);
  if (found === undefined) throw new Error(`no item ${name}`);
  return found;
}

function words(records: readonly BookRecord[], name: string): string {
  const ledger = book.ledger([noStall, ...records]);
  const spoken = closingWords(item(records, name), ledger, TODAY, english);
  return [spoken.title, spoken.left, spoken.cause, spoken.next].join(' | ');
}

const delivery = movement('delivery', { lines: { honey: 24, jam: 12 } });
const toAda = movement('handover', { seller: 'ada', lines: { honey: 24, jam: 12 } });
const paid = movement('payment', { seller: 'ada', tender: 'cash', cents: 27_000 });
const banked = movement('deposit', { cents: 27_000 });
const taken = movement('debit', { cents: 27_000 });
const counted = movement('count', { lines: { honey: 0, jam: 0 } });
const wholeSeason = [delivery, toAda, paid, banked, taken, counted];

describe('a season that came out even', () => {
  it('is ready', () => {
    expect(list(wholeSeason).ready).toBe(true);
  });

  it('is not ready without any one of its records', () => {
    for (const left of wholeSeason) {
      const rest = wholeSeason.filter((record) => record !== left);
      expect(list(rest).ready, left.kind).toBe(false);
    }
  });

  it('has nothing to do where nothing happened', () => {
    const { ready, items } = list([]);
    expect(ready).toBe(true);
    expect(items.map((one) => one.state)).not.toContain('done');
  });
});

describe('goods', () => {
  it('asks for a count on or after the last goods movement', () => {
    const early = movement('count', { lines: {}, date: '2027-01-31' });
    const state = item([delivery, toAda, early], 'stockroom-counted');
    expect(state).toMatchObject({
      state: 'open',
      cause: { kind: 'goods_moved_after_count', counted: '2027-01-31', moved: '2027-02-01' },
    });
  });

  it('compares product by product and never nets', () => {
    const swapped = movement('count', { lines: { honey: 25, jam: 11 } });
    expect(item([delivery, swapped], 'stockroom-counted')).toMatchObject({
      state: 'open',
      left: { stockroom: 2 },
      lines: { honey: 1, jam: -1 },
      records: [delivery.id, swapped.id],
    });
    expect(words([delivery, swapped], 'stockroom-counted')).toContain('honey 1 over, jam 1 short');
  });

  it('asks for a decision on unsold goods, and for the record where more went out than in', () => {
    expect(item([delivery], 'stockroom').next).toBe('decide_on_unsold_goods');
    expect(item([toAda], 'stockroom').next).toBe('find_the_missing_delivery');
  });
});

describe('a family in credit is told apart', () => {
  const order = { order: 'W1', seller: 'ada', paid: 2400, sent: 'hand' } as const;

  it('paid orders waiting for goods', () => {
    const online = movement('online', { ...order, lines: { honey: 3 } });
    expect(item([online], 'owed:ada')).toMatchObject({
      left: { 'owed:ada': -2400 },
      cause: { kind: 'family_in_credit', waiting: 2400, gifts: 0, paidTooMuch: 0 },
      next: 'hand_over_the_paid_order',
    });
  });

  it('gift units bought online but not recorded', () => {
    const online = movement('online', { ...order, lines: { honey: 2 }, gifts: { honey: 1 } });
    const handed = movement('handover', { seller: 'ada', lines: { honey: 2 } });
    expect(item([online, handed], 'owed:ada')).toMatchObject({
      left: { 'owed:ada': -800 },
      cause: { waiting: 0, gifts: 800, paidTooMuch: 0 },
      next: 'record_the_gift_units',
    });
  });

  it('paid too much', () => {
    const tooMuch = movement('payment', { seller: 'ada', tender: 'card', cents: 500 });
    expect(words([tooMuch], 'owed:ada')).toBe(
      'ada | $5.00 in credit | Paid too much $5.00. | Pay the amount back and record a refund.',
    );
  });

  it('all three at once, with the figures', () => {
    const online = movement('online', {
      ...order,
      lines: { honey: 2 },
      gifts: { honey: 1 },
    });
    const tooMuch = movement('payment', { seller: 'ada', tender: 'cash', cents: 500 });
    expect(item([online, tooMuch], 'owed:ada')).toMatchObject({
      left: { 'owed:ada': -2900 },
      cause: { waiting: 1600, gifts: 800, paidTooMuch: 500 },
    });
  });

  it('goods out before the order came in do not fill it', () => {
    const earlier = movement('handover', { seller: 'ada', lines: { honey: 3 } });
    const settled = movement('payment', { seller: 'ada', tender: 'cash', cents: 2400 });
    const online = movement('online', { ...order, lines: { honey: 3 }, date: '2027-02-09' });
    expect(item([earlier, settled, online], 'owed:ada')).toMatchObject({
      cause: { waiting: 2400, gifts: 0, paidTooMuch: 0 },
    });
  });

  it('a payment that stands under the wrong sibling', () => {
    const handed = movement('handover', { seller: 'ben', lines: { honey: 1 } });
    const wrong = movement('payment', { seller: 'ada', tender: 'cash', cents: 800 });
    for (const account of ['owed:ada', 'owed:ben']) {
      expect(item([handed, wrong], account).next).toBe('move_the_payment_to_the_sibling');
    }
  });
});

describe('families still to pay', () => {
  it('names a cheque that came back', () => {
    const handed = movement('handover', { seller: 'ada', lines: { honey: 1 } });
    const cheque = movement('payment', { seller: 'ada', tender: 'cheque', cents: 800 });
    const back = movement('bounced', { payment: cheque.id, fee: 1500 });
    expect(words([handed, cheque, back], 'owed:ada')).toBe(
      'ada | $8.00 still to pay | A cheque of $8.00 came back on 1 Feb 2027. | ' +
        'Hand over the statement and ask for the payment.',
    );
  });
});

describe('stalls', () => {
  const close = movement('stall-close', {
    stall: 'quay',
    out: { honey: 2 },
    back: {},
    float: 0,
    cash: 1600,
    cards: 0,
    cheques: 0,
  });
  const withStall = (records: readonly BookRecord[]): ClosingItem | undefined =>
    closingList(book.ledger(records), TODAY).items.find((one) => one.item === 'stall:quay');

  it('open until settled, then until shared out, then done', () => {
    expect(withStall([])?.cause).toEqual({ kind: 'not_settled' });
    expect(withStall([close])).toMatchObject({
      cause: { kind: 'not_shared' },
      left: { 'pool:stall:quay': 2 },
    });
    const shared = movement('shareout', { pool: 'stall:quay', lines: { ada: { honey: 2 } } });
    expect(withStall([close, shared])?.state).toBe('done');
    expect(withStall([close, { ...close, id: shared.id }])?.cause).toEqual({
      kind: 'settled_twice',
    });
  });
});

describe('money', () => {
  it('says since when cash is held: since the box was last empty', () => {
    const first = movement('payment', { seller: 'ada', tender: 'cash', cents: 500 });
    const empty = movement('deposit', { cents: 500, date: '2027-02-02' });
    const later = movement('payment', {
      seller: 'ada',
      tender: 'cheque',
      cents: 700,
      date: '2027-03-05',
    });
    expect(item([first, empty, later], 'cashbox')).toMatchObject({
      left: { cashbox: 700 },
      records: [later.id],
      cause: { kind: 'held_since', date: '2027-03-05' },
    });
  });

  it('sets a debit against what the account holds that day', () => {
    const debit = movement('debit', { cents: 27_000, date: '2027-03-01' });
    const late = movement('deposit', { cents: 27_000, date: '2027-03-02' });
    expect(item([delivery, toAda, paid, debit, late], `debit:${debit.id}`)).toMatchObject({
      state: 'open',
      left: { bank: -27_000 },
      cause: { kind: 'account_too_low', takes: 27_000, holds: 0 },
    });
  });

  it('raises a debit that is not what was announced', () => {
    const debit = movement('debit', { cents: 27_000, announced: 26_000 });
    expect(item([delivery, toAda, paid, banked, debit], `debit:${debit.id}`)).toMatchObject({
      cause: { kind: 'debit_not_as_announced', taken: 27_000, announced: 26_000 },
    });
  });

  it('raises it too where a deadline announced it, before that the account was too low', () => {
    const debit = movement('debit', { cents: 27_000, date: '2027-03-02' });
    const season = setting('season', {
      name: 'Spring 2027',
      currency: 'USD',
      starts: '2027-02-01',
      ends: '2027-04-18',
      deadlines: [{ deadline: 'first', name: 'First', date: '2027-03-01', announced: 26_000 }],
    });
    expect(item([season, delivery, toAda, debit], `debit:${debit.id}`)).toMatchObject({
      state: 'open',
      left: { supplier: 1000 },
      cause: { kind: 'debit_not_as_announced', taken: 27_000, announced: 26_000 },
    });
  });

  it('tells the supplier’s due from proceeds to come', () => {
    const proceeds = setting('proceeds', {
      basis: 'average',
      steps: [
        { from: 0, cents: 50 },
        { from: 36, cents: 75 },
      ],
    });
    expect(item([delivery, toAda, proceeds], 'supplier')).toMatchObject({
      left: { supplier: -27_000 },
      cause: { kind: 'owed_to_supplier', proceedsToCome: 36 * 75 },
    });
  });
});

describe('prizes, conflicts and dates', () => {
  const level = setting('level', {
    level: 'first',
    units: 36,
    prize: 'Shirt',
    choices: ['small', 'large'],
  });

  it('counts missing choices by seller', () => {
    expect(item([...wholeSeason, level], 'prize-choices')).toMatchObject({
      state: 'open',
      left: { 'choices:ada': 1 },
    });
    const choice = setting('choice', { seller: 'ada', level: 'first', choice: 'small' });
    expect(item([...wholeSeason, level, choice], 'prize-choices').state).toBe('done');
  });

  it('keeps a conflict until a person settles it', () => {
    const one = movement('delivery', { lines: { honey: 23, jam: 12 }, replaces: delivery.id });
    const two = movement('delivery', { lines: { honey: 24, jam: 12 }, replaces: delivery.id });
    const both = [...wholeSeason, one, two];
    expect(item(both, 'conflicts').left).toEqual({ conflicts: 1 });
    expect(item([...both, book.remove(one.id)], 'conflicts').state).toBe('not-needed');
    expect(list([...both, book.remove(one.id)]).ready).toBe(true);
  });

  it('tells deadlines ahead and passed and is not held up by them', () => {
    const season = setting('season', {
      name: 'Spring',
      currency: 'USD',
      starts: '2027-02-01',
      ends: '2027-04-18',
      deadlines: [
        { deadline: 'prizes', name: 'Prize order', date: '2027-04-25' },
        { deadline: 'sizes', name: 'Sizes', date: '2027-04-10' },
      ],
    });
    const records = [...wholeSeason, season];
    expect(words(records, 'deadline:prizes')).toBe('Prize order |  |  | 25 Apr 2027, in 5 days.');
    expect(item(records, 'deadline:sizes').state).toBe('done');
    expect(list(records).ready).toBe(true);
  });
});
