import { describe, expect, it } from 'vitest';
import { demoSeason } from '../../scenarios/demo/demo-season.ts';
import { Ledger } from '../ledger/ledger.ts';
import { type Sheet, workbookSheets } from './export-xlsx.ts';

const ledger = Ledger.of(demoSeason());

function sheetsOf(): readonly Sheet[] {
  const sheets = workbookSheets(ledger);
  return sheets.ok ? sheets.value : [];
}

describe('the workbook', () => {
  it('has records, balances and families', () => {
    expect(sheetsOf().map((sheet) => sheet.name)).toEqual(['Records', 'Balances', 'Families']);
    const [, balances, families] = sheetsOf();
    expect(balances?.rows).toContainEqual([
      'money',
      'bank',
      null,
      null,
      { whole: 53090, digits: 2 },
    ]);
    expect(families?.rows).toContainEqual([
      'farkas',
      'Ödön Farkas',
      'Réka F.',
      { whole: 20, digits: 0 },
      { whole: 10200, digits: 2 },
      { whole: 0, digits: 2 },
    ]);
  });
});
