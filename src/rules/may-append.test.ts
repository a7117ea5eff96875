import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readRecord } from '../intake/read-record.ts';
import { Ledger } from '../ledger/ledger.ts';
import type { BookRecord } from '../records/record.ts';
import { mayAppend } from './may-append.ts';

/** One file a refusal: the book, the record that is refused, and the exact words. */
interface Mistake {
  readonly message: string;
  readonly field: string;
  readonly more?: readonly unknown[];
  readonly record: unknown;
}

const folder = new URL('mistakes/', import.meta.url);
const files = readdirSync(folder).filter((name) => name !== 'the-book.json');
const notReady = { isReadyToClose: () => false };
const ready = { isReadyToClose: () => true };

describe('each mistake is refused by name, in its exact words', () => {
  it.each(files)('%s', (file) => {
    const mistake: Mistake = fromFile(file);
    const record = read(mistake.record);
    const ledger = bookWith(mistake.more ?? []);
    expect(mayAppend(ledger, record, notReady)).toEqual({
      name: file.replace('.json', '').replaceAll('-', '_'),
      record: record.id,
      field: mistake.field,
      message: mistake.message,
    });
  });

  it('has an example of every refusal there is', () => {
    const source = readFileSync(new URL('refusals.ts', import.meta.url), 'utf8');
    const things = ['product', 'seller', 'family', 'host', 'neighbour', 'stall', 'level'];
    const plain = [...source.matchAll(/^ {2}\| '(\w+)'/gm)].map((match) => match[1]);
    const names = [...plain, ...things.map((thing) => `unknown_${thing}`)];
    expect(files.map((file) => file.replace('.json', '').replaceAll('-', '_')).sort()).toEqual(
      names.sort(),
    );
  });
});

describe('what is not refused', () => {
  const season = read(fromFile<{ record: unknown }>('season-is-not-ready.json').record);
  const closing = fromFile<Mistake & { record: { id: string } }>(
    'late-entry-is-dated-before-the-closing.json',
  );

  it('closes a season whose closing list is done, without a second person', () => {
    expect(mayAppend(bookWith([]), season, ready)).toBeUndefined();
  });

  it('closes with open items for a reason and a second person', () => {
    const agreed = {
      ...season,
      closed: { date: '2027-04-20', second: 'Sam Hill', reason: 'One jar is missing' },
    };
    expect(mayAppend(bookWith([]), read(agreed), notReady)).toBeUndefined();
  });

  it('takes a dated late entry after the closing, and the same record again', () => {
    const late: Mistake = fromFile('late-entry-is-dated-before-the-closing.json');
    const entry = { ...read(late.record), date: '2027-04-20' };
    const ledger = bookWith(late.more ?? []);
    expect(mayAppend(ledger, read(entry), notReady)).toBeUndefined();
    expect(mayAppend(ledger, read(late.more?.[0]), notReady)).toBeUndefined();
  });

  it('ticks a prize as handed out after the closing, but chooses no other', () => {
    const ledger = bookWith(closing.more ?? []);
    const common = { id: closing.record.id, at: '2027-06-12T18:00:00.000Z', by: 'manager' };
    const cap = { ...common, kind: 'choice', seller: 'ada', level: 'bronze', choice: 'red' };
    expect(mayAppend(ledger, read({ ...cap, handed: '2027-06-12' }), notReady)).toBeUndefined();
    expect(mayAppend(ledger, read(cap), notReady)?.name).toBe('season_is_closed');
  });

  it('removes set-up that nothing names, and edits set-up that is in use', () => {
    const inUse: Mistake = fromFile('still-in-use.json');
    const ledger = bookWith([]);
    const removal = read(inUse.record);
    const unused = ledger.setup.levels.get('bronze');
    expect(mayAppend(ledger, { ...removal, ...voiding(unused?.id) }, notReady)).toBeUndefined();
    const honey = ledger.setup.products.get('honey');
    const edit = { ...honey, id: removal.id, replaces: honey?.id, price: 900 };
    expect(mayAppend(ledger, read(edit), notReady)).toBeUndefined();
    const renamed = { ...edit, product: 'jam' };
    expect(mayAppend(ledger, read(renamed), notReady)?.name).toBe('still_in_use');
  });
});

function voiding(id = ''): { readonly voids: string } {
  return { voids: id };
}

function bookWith(more: readonly unknown[]): Ledger {
  return Ledger.of([...fromFile<unknown[]>('the-book.json'), ...more].map(read));
}

function read(value: unknown): BookRecord {
  const { record, findings } = readRecord(value, 1);
  expect(findings).toEqual([]);
  if (record === undefined) throw new Error('the example is not a record');
  return record;
}

function fromFile<T>(file: string): T {
  return JSON.parse(readFileSync(new URL(file, folder), 'utf8'));
}
