import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import type { BookRecord } from '../../records/record.ts';
import { explain } from './explain.ts';
import { type ByAccount, readObservation } from './observation.ts';

/** Every object answers to `constructor`, which is a fair id of a product and of a child. */
const made = testBook({ constructor: 500, honey: 800, jam: 650 }, ['constructor', 'ada']);
const delivery = made.movement('delivery', { lines: { honey: 48, jam: 24 } });
const also = made.movement('delivery', { lines: { constructor: 24 } });

function first(records: readonly BookRecord[], seen: ByAccount) {
  const ledger = made.ledger(records);
  const observed = readObservation(ledger, seen);
  if (!observed.ok) throw new Error(observed.refusal);
  return explain(ledger, observed.value);
}

describe('a product and a seller with the id constructor', () => {
  const out = made.movement('handover', { seller: 'ada', lines: { constructor: 21, honey: 2 } });
  const small = made.movement('handover', { seller: 'constructor', lines: { honey: 3 } });
  const all = [delivery, also, out, small];

  it('differ by whole units where nothing of them is left', () => {
    const seen = { 'stock:stockroom': { honey: 43, jam: 24 } };
    expect(first(all, seen).difference).toEqual({ 'stock:stockroom': { constructor: -3 } });
  });

  it('are found as a wrong number', () => {
    const { explanations } = first(all, {
      'stock:stockroom': { constructor: 12, honey: 43, jam: 24 },
    });
    const lines = { constructor: 12, honey: 2 };
    expect(explanations[0]?.edits).toEqual([{ op: 'change', record: out.id, fields: { lines } }]);
  });

  it('are found as a line that was left out, and as the wrong product', () => {
    const left = first(all, {
      'stock:stockroom': { constructor: 0, honey: 43, jam: 24 },
      'stock:seller:constructor': { constructor: 3, honey: 3 },
      'money:owed:constructor': 3900,
    });
    const lines = { honey: 3, constructor: 3 };
    expect(left.explanations.map(({ edits }) => edits[0])).toContainEqual({
      op: 'change',
      record: small.id,
      fields: { lines },
    });
    const other = first(all, { 'stock:stockroom': { constructor: 0, honey: 46, jam: 24 } });
    expect(other.explanations.map(({ edits }) => edits[0])).toContainEqual({
      op: 'change',
      record: small.id,
      fields: { lines: { constructor: 3 } },
    });
  });

  it('are found in a share-out at the wrong seller, and in a count', () => {
    const posted = { order: 'o1', lines: { constructor: 4 }, paid: 2000, sent: 'post' } as const;
    const online = made.movement('online', posted);
    const shared = made.movement('shareout', { pool: 'post', lines: { ada: { constructor: 4 } } });
    const count = made.movement('count', { lines: { honey: 43, jam: 24 } });
    const { explanations } = first([...all, online, shared, count], {
      'credit:seller:ada': { constructor: 21, honey: 2 },
      'credit:seller:constructor': { constructor: 4, honey: 3 },
    });
    expect(explanations.map(({ edits }) => edits[0])).toContainEqual({
      op: 'change',
      record: shared.id,
      fields: { lines: { constructor: { constructor: 4 } } },
    });
    const seen = { 'stock:stockroom': { constructor: 12, honey: 43, jam: 24 } };
    const counted = first([...all, count], seen);
    expect(counted.explanations[0]?.odds).toBeGreaterThan(0.5);
  });

  it('are settled at a stall that was left out', () => {
    const { explanations } = first(all, {
      'stock:stockroom': { honey: 43, jam: 24 },
      'stock:lost': { constructor: 1 },
      'stock:stall-sold': { constructor: 2 },
      'credit:pool:stall:quay': { constructor: 2 },
    });
    const adds = explanations.flatMap(({ edits }) =>
      edits.flatMap((edit) => (edit.op === 'add' ? [edit.record] : [])),
    );
    expect(adds).toContainEqual(
      expect.objectContaining({
        kind: 'stall-close',
        out: { constructor: 3 },
        damaged: { constructor: 1 },
      }),
    );
  });

  it('are refused by name where no account is called so', () => {
    for (const name of ['stock:__proto__', 'money:constructor', '__proto__', 'stock:toString']) {
      const said: unknown = JSON.parse(`{${JSON.stringify(name)}:{"honey":1}}`);
      expect(readObservation(made.ledger(all), said).ok).toBe(false);
    }
    const proto: unknown = JSON.parse('{"stock:stockroom":{"__proto__":1}}');
    const read = readObservation(made.ledger(all), proto);
    expect(read.ok ? '' : read.refusal).toContain('__proto__');
  });
});
