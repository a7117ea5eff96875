import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import type { BookRecord } from '../../records/record.ts';
import { poolLift } from './pool-lift.ts';

const book = testBook({ honey: 800, jam: 650 }, ['ada', 'ben', 'cy']);
const { movement, setting } = book;
const level = (id: string, units: number) => setting('level', { level: id, units, prize: id });
const records: readonly BookRecord[] = [
  level('badge', 10),
  level('shirt', 20),
  movement('handover', { seller: 'ada', lines: { honey: 16 } }),
  movement('handover', { seller: 'ben', lines: { honey: 9 } }),
  movement('handover', { seller: 'cy', lines: { honey: 1 } }),
  movement('online', { order: 'O-1', lines: { honey: 4, jam: 2 }, paid: 4500, sent: 'post' }),
];
const liftOf = (worths: Readonly<Record<string, number>> = {}, more = records) => {
  const answer = poolLift(book.ledger(more), 'post', worths);
  if (!answer.ok) throw new Error(answer.refusal.kind);
  return answer.value;
};

describe('the lift of a pool', () => {
  it('gives the units where they reach most, beside what an even share reaches', () => {
    const { sellers, lifted, even, units } = liftOf();
    expect(units).toBe(6);
    expect(sellers.map((one) => [one.seller, one.lifted, one.even])).toEqual([
      ['ada', 4, 2],
      ['ben', 1, 2],
      ['cy', 1, 2],
    ]);
    expect(lifted).toEqual({ goals: 0, steps: 3, worth: 3 });
    expect(even).toEqual({ goals: 0, steps: 2, worth: 2 });
  });

  it('gives each product out whole, each seller exactly as lifted', () => {
    const { shared, sellers } = liftOf();
    for (const { seller, lifted } of sellers) expect(shared.totals[seller]).toBe(lifted);
    const given = (product: string) =>
      Object.values(shared.lines).reduce((sum, lines) => sum + (lines[product] ?? 0), 0);
    expect([given('honey'), given('jam')]).toEqual([4, 2]);
    expect(shared.beyond).toBe(0);
  });

  it('puts goals before steps', () => {
    const goal = setting('seller', {
      seller: 'cy',
      name: 'cy',
      family: 'home',
      active: true,
      goal: 7,
    });
    const { sellers, lifted } = liftOf({}, [...records, goal]);
    expect(sellers.find(({ seller }) => seller === 'cy')?.lifted).toBe(6);
    expect(lifted.goals).toBe(1);
  });

  it('follows what the group says a step counts', () => {
    expect(liftOf({ shirt: 0 }).sellers.find(({ seller }) => seller === 'ada')?.lifted).toBe(0);
  });

  it('has nothing to do where the pool is empty', () => {
    expect(poolLift(book.ledger([]), 'post')).toEqual({
      ok: false,
      refusal: { kind: 'nothing_to_share', pool: 'post' },
    });
  });
});
