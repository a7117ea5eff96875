import { describe, expect, it } from 'vitest';
import { finished } from '../base/finished.ts';
import { testBook } from '../ledger/test-book.ts';
import type { BookRecord } from '../records/record.ts';
import { type AttentionItem, attention } from './attention.ts';

const book = testBook({ honey: 800 }, ['ada', 'ben']);
const { movement, setting } = book;
const TODAY = '2027-03-04';
const season = setting('season', {
  name: 'Spring 2027',
  currency: 'USD',
  starts: '2027-02-01',
  ends: '2027-04-18',
  deadlines: [
    { deadline: 'first', name: 'First', date: '2027-02-10', announced: 400 },
    { deadline: 'debit-2', name: 'Second debit', date: '2027-03-08', announced: 90_000 },
    { deadline: 'far', name: 'Far away', date: '2027-04-10' },
  ],
});
const delivery = movement('delivery', { lines: { honey: 200 } });
const out = (seller: string, honey: number) => movement('handover', { seller, lines: { honey } });

function asked(records: readonly BookRecord[], today = TODAY): readonly AttentionItem[] {
  return finished(attention(book.ledger(records), today));
}

function queue(records: readonly BookRecord[], today = TODAY): string[] {
  return asked(records, today).map(({ item }) => item.item);
}

describe('the queue of what needs attention', () => {
  it('has a debit that took another amount first on the day it was taken', () => {
    const debit = movement('debit', { cents: 500, date: '2027-02-10' });
    const records = [season, delivery, out('ada', 10), debit];
    const [first] = asked(records, '2027-02-10').filter(({ due }) => due);
    expect(queue(records, '2027-02-10')).toContain(`debit:${debit.id}`);
    expect(first).toMatchObject({ item: { item: 'stall:quay' }, due: '2027-02-01' });
    expect(queue(records, '2027-02-10').indexOf(`debit:${debit.id}`)).toBe(1);
  });

  it('has the next days before money, and money before little money', () => {
    const found = queue([season, delivery, out('ada', 10), out('ben', 90)]);
    const [ada, ben] = [found.indexOf('owed:ada'), found.indexOf('owed:ben')];
    expect(found.indexOf('deadline:debit-2')).toBe(1);
    expect(ben).toBeGreaterThan(1);
    expect(ada).toBeGreaterThan(ben);
    expect(found).not.toContain('deadline:far');
    expect(found).not.toContain('deadline:first');
  });

  it('tells what a debit to come is short of', () => {
    const found = asked([season, delivery]);
    const debit = found.find(({ item }) => item.item === 'deadline:debit-2');
    expect(debit).toMatchObject({ due: '2027-03-08', short: 90_000, minor: 90_000 });
  });

  it('counts no credit as money', () => {
    const posted = movement('online', {
      order: 'o1',
      lines: { honey: 9 },
      paid: 7200,
      sent: 'post',
    });
    const pool = asked([season, delivery, posted]).find(({ item }) => item.item === 'pool:post');
    expect(pool).toMatchObject({ minor: 0 });
  });
});
