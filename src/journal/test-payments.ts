import { uuid7 } from '../base/id.ts';
import type { Outcome } from '../base/outcome.ts';
import { seeded } from '../base/seeded.ts';
import type { RecordOf } from '../records/record.ts';

/** Records for tests of engines: payments whose ids rise with their number, from 0. */
export type Payment = RecordOf<'payment'>;

export function payments(count: number, from = 0): readonly Payment[] {
  return Array.from({ length: count }, (_, at) => payment(from + at));
}

export function four(): [Payment, Payment, Payment, Payment] {
  return [payment(0), payment(1), payment(2), payment(3)];
}

export function payment(number: number): Payment {
  const random = seeded(number);
  const ms = Date.UTC(2027, 1, 1, 18) + number * 1000;
  return {
    id: uuid7(ms, random.bytes(10)),
    at: new Date(ms).toISOString(),
    by: 'manager',
    kind: 'payment',
    date: '2027-02-01',
    seller: random.pick(['ada', 'ben', 'cem']),
    tender: 'cash',
    cents: random.whole(100, 90_000),
  };
}

/** The value of an outcome that must be well; a refusal is a bug of the test's subject. */
export function taken<T, R>(outcome: Outcome<T, R>): T {
  if (!outcome.ok) throw new Error(`refused: ${JSON.stringify(outcome.refusal)}`);
  return outcome.value;
}
