import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import type { Header } from '../records/header.ts';
import { FINDINGS_MAX } from './finding-list.ts';
import { readBook } from './read-book.ts';
import { readRecord } from './read-record.ts';
import { writeBook } from './write-book.ts';

const header: Header = { book: 'cratebook/1', group: 'wrenfield', season: 'spring-2027' };
const made = testBook({ honey: 800 }, ['ada']);
const records = [
  ...made.setup,
  made.movement('payment', { seller: 'ada', tender: 'cash', cents: 3000, note: 'in coins' }),
];
const text = [...writeBook(header, records)].join('');

describe('a book file', () => {
  it('is read as it was written', () => {
    const read = readBook(text);
    expect(read).toMatchObject({ header, records, findings: [], omitted: 0 });
    expect(read.lines).toEqual(records.map((_, index) => index + 2));
    expect([...writeBook(header, read.records)].join('')).toBe(text);
  });

  it('may have other line ends, and none or an empty line at its end', () => {
    for (const same of [text.replaceAll('\n', '\r\n'), text.slice(0, -1), `${text}\n`]) {
      expect(readBook(same)).toMatchObject({ records, findings: [] });
    }
  });

  it('may say a record twice in the same words, in whatever order of fields', () => {
    const last = records.at(-1) ?? {};
    const turned = Object.fromEntries(Object.entries(last).reverse());
    expect(readBook(`${text}${JSON.stringify(turned)}\n`)).toMatchObject({ records, findings: [] });
  });

  it('keeps fields that it does not know, in their place, and tells of them', () => {
    const later = text.replace('"note":', '"weight":{"grams":[1.5,null]},"note":');
    const { findings, records: read } = readBook(later);
    expect(findings).toMatchObject([{ field: 'weight', severity: 'warning' }]);
    expect([...writeBook(header, read)].join('')).toBe(later);
  });

  it('may have white space and numbers in other ways of writing, where nothing is lost', () => {
    const spaced = text.replace('"cents":3000', '"cents" :  3.0e3 ');
    expect(readBook(spaced)).toMatchObject({ records, findings: [] });
  });

  it('tells of at most so many findings, and how many more there were', () => {
    const wrong = '{"kind":"paymint"}\n'.repeat(FINDINGS_MAX + 5);
    const { findings, omitted } = readBook(text + wrong);
    expect(findings).toHaveLength(FINDINGS_MAX);
    expect(omitted).toBe(5);
  });

  it('finds several things on several lines at once', () => {
    const wrong = text.replace('"price":800', '"price":-8').replace('"cents":3000', '"cents":"3"');
    expect(readBook(wrong).findings.map(({ field }) => field)).toEqual(['price', 'cents']);
  });
});

describe('a single record, as in a request', () => {
  const good = made.movement('payment', { seller: 'ada', tender: 'cash', cents: 3000 });

  it('is handed on as it came', () => {
    expect(readRecord(good, 1)).toEqual({ record: good, findings: [] });
  });

  it('names the likely kind, every missing field, and its own id', () => {
    const { id, at, by } = good;
    expect(readRecord({ id, at, by, kind: 'paymint' }, 3).findings).toMatchObject([
      { line: 3, record: id, field: 'kind', wanted: expect.stringContaining('payment') },
    ]);
    const fields = readRecord({ id, at, by, kind: 'payment' }, 3).findings.map((one) => one.field);
    expect(fields).toEqual(['date', 'seller', 'tender', 'cents']);
  });

  it('takes an id for an id, although its digits pass the card check', () => {
    // 8000-0000-0000-0021 would pass it (ISO/IEC 7812-1 annex B).
    const value = { ...good, note: 'see 0195f3c2-0000-7000-8000-000000000021' };
    expect(readRecord(value, 1)).toEqual({ record: value, findings: [] });
  });

  it('never repeats a card number, wherever it stands', () => {
    const cards = ['4111 1111 1111 1111', '5500-0000-0000-0004', '340000000000009'];
    for (const card of cards) {
      for (const value of [
        { ...good, note: card },
        { ...good, [card]: 1 },
        { ...good, tender: card },
        card,
      ]) {
        const { record, findings } = readRecord(value, 1);
        expect(record).toBeUndefined();
        expect(JSON.stringify(findings)).not.toContain(card.slice(-4));
      }
    }
  });
});
