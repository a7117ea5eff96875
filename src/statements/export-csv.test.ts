import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { demoSeason } from '../../scenarios/demo/demo-season.ts';
import { Ledger } from '../ledger/ledger.ts';
import { testBook } from '../ledger/test-book.ts';
import { csvText, exportCsv } from './export-csv.ts';

function rowsOf(text: string): string[][] {
  return Papa.parse<string[]>(text, { skipEmptyLines: true }).data;
}

describe('CSV text', () => {
  it('keeps true numbers and defuses everything a spreadsheet would calculate', () => {
    const texts = ['-12.50', '-7', '=1+1', '+1', '@x', '-1+1', '-x', '\t=1', '=1\n2', '－1', 'a=b'];
    const [row] = rowsOf(csvText([texts]));
    expect(row).toEqual([
      '-12.50',
      '-7',
      "'=1+1",
      "'+1",
      "'@x",
      "'-1+1",
      "'-x",
      "'\t=1",
      "'=1\n2",
      "'－1",
      'a=b',
    ]);
    expect(csvText([[-5, 7]])).toBe('-5,7\r\n');
  });

  it("teeth: the library's own pattern lets a formula of two lines through", () => {
    const text = Papa.unparse([['=1\n2']], { escapeFormulae: true });
    expect(text).not.toContain("'=");
  });
});

describe('records as CSV', () => {
  it('has a row for each line and each sum, with the worth at the price of the day', () => {
    const book = testBook({ honey: 800, jam: 650 }, ['ada']);
    const out = book.movement('handover', {
      seller: 'ada',
      lines: { honey: 2, jam: 3 },
      slip: 'G-1',
    });
    const paid = book.movement('payment', { seller: 'ada', tender: 'cash', cents: 1205 });
    const removal = book.remove(paid.id);
    const rows = rowsOf([...exportCsv(Ledger.of([...book.setup, out, paid, removal]))].join(''));
    const [heads = []] = rows;
    const told = rows
      .filter((row) => [out.id, paid.id, removal.id].includes(row[0] ?? ''))
      .map((row) => Object.fromEntries(heads.map((head, index) => [head, row[index]])));
    expect(told).toMatchObject([
      {
        kind: 'handover',
        about: 'ada',
        product: 'honey',
        units: '2',
        price: '8.00',
        amount: '16.00',
      },
      { kind: 'handover', product: 'jam', units: '3', amount: '19.50', reference: 'G-1' },
      { kind: 'payment', counts: 'no', part: 'cents', amount: '12.05', way: 'cash' },
      { kind: 'void', 'points at': paid.id, text: 'keyed twice' },
    ]);
  });

  it('tells every record of the demo season at least once, in rows of one width', () => {
    const records = demoSeason();
    const rows = rowsOf([...exportCsv(Ledger.of(records))].join(''));
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([16]));
    expect(new Set(rows.slice(1).map((row) => row[0]))).toEqual(
      new Set(records.map((record) => record.id)),
    );
  });
});
