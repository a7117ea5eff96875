import { describe, expect, it } from 'vitest';
import { fileText } from '../table/file-text.ts';
import { camtSample, ofxSample, sampleClosing, sampleLines, written } from './bank-samples.ts';
import { readBankFile } from './read-bank-file.ts';

const us = (day: string) => `${day.slice(5, 7)}/${day.slice(8)}/${day.slice(0, 4)}`;
const dotted = (day: string) => `${day.slice(8)}.${day.slice(5, 7)}.${day.slice(0, 4)}`;
const balances = sampleLines.map((_, at) =>
  sampleLines.slice(0, at + 1).reduce((sum, { cents }) => sum + cents, 0),
);

function csv(head: string, row: (at: number) => string, isNewestFirst = false): string {
  const rows = sampleLines.map((_, at) => row(at));
  return [head, ...(isNewestFirst ? rows.toReversed() : rows)].join('\n');
}

const at = (place: number) => sampleLines[place] ?? { date: '', cents: 0, text: '' };

const LAYOUTS: Readonly<Record<string, string>> = {
  'one signed amount and a balance': csv('Posting Date,Description,Amount,Running Balance', (n) =>
    [us(at(n).date), at(n).text, written(at(n).cents), written(balances[n] ?? 0)].join(),
  ),
  'newest first, in and out, words above the heads': `Account 1234\n\n${csv(
    'Date;Text;Money out;Money in;Balance',
    (n) => {
      const { date, text, cents } = at(n);
      const parts = [cents < 0 ? written(-cents) : '', cents < 0 ? '' : written(cents)];
      return [date, `"${text}"`, ...parts, written(balances[n] ?? 0)].join(';');
    },
    true,
  )}`,
  'decimal commas and points between thousands': csv(
    'Buchungstag;Verwendungszweck;Betrag;Saldo',
    (n) =>
      [
        dotted(at(n).date),
        at(n).text,
        written(at(n).cents, ',', '.'),
        written(balances[n] ?? 0, ',', '.'),
      ].join(';'),
  ),
  'brackets, currency signs and tabs': csv('Date\tMemo\tAmount\tBalance', (n) => {
    const { date, text, cents } = at(n);
    const amount = cents < 0 ? `(${written(-cents, '.', ',')})` : `$${written(cents)}`;
    return [us(date), text, amount, written(balances[n] ?? 0)].join('\t');
  }),
  'amounts without a sign and a column of directions': csv(
    'Date,Details,DC,Amount,Balance',
    (n) => {
      const { date, text, cents } = at(n);
      const way = cents < 0 ? 'DR' : 'CR';
      const amount = written(Math.abs(cents));
      return [date, text, way, amount, written(balances[n] ?? 0)].join();
    },
  ),
};

describe('a statement reads the same in every format', () => {
  const files = {
    'OFX 1': ofxSample(1),
    'OFX 2': ofxSample(2),
    'OFX 2 with a byte-order mark': `\uFEFF${ofxSample(2)}`,
    'camt.053': camtSample(),
    'camt.053 with prefixed names': camtSample().replace(/<(\/?)(?!\?)/g, '<$1ns:'),
    ...LAYOUTS,
  };
  it.each(Object.entries(files))('%s', (_, text) => {
    const read = readBankFile(text, 'USD');
    if (!read.ok) throw new Error(JSON.stringify(read.refusal));
    const byDay = read.value.lines.toSorted((a, b) => (a.date < b.date ? -1 : 0));
    const told = byDay.map(({ date, cents, text: words }) => ({ date, cents, text: words }));
    expect(new Set(told)).toEqual(new Set(sampleLines));
    expect(read.value.closing).toBe(sampleClosing);
    expect(read.value.lines.map(({ line }) => line)).toEqual([1, 2, 3, 4]);
  });

  it('also in Windows-1252', () => {
    const bytes = Uint8Array.from([...'Date;Text;Betrag\n1.2.2027;M\u00fcller;5,00'], (sign) =>
      sign.charCodeAt(0),
    );
    const read = readBankFile(fileText(bytes), 'EUR');
    expect(read).toMatchObject({ ok: true, value: { lines: [{ text: 'Müller', cents: 500 }] } });
  });
});

describe('what is not booked or not money is no line', () => {
  it('pending entries of camt.053', () => {
    const read = readBankFile(camtSample().replace('<Sts>BOOK', '<Sts>PDNG'), 'USD');
    expect(read).toMatchObject({ value: { lines: [{ line: 2 }, { line: 3 }, { line: 4 }] } });
  });
});

describe('a bad file is refused with one line, and nothing of it is taken', () => {
  const entities = Array.from(
    { length: 9 },
    (_, n) => `<!ENTITY l${n} "${(n === 0 ? 'lol' : `&l${n - 1};`).repeat(10)}">`,
  );
  const bomb = camtSample().replace('<Document', `<!DOCTYPE d [${entities.join('')}]><Document`);
  const first = LAYOUTS['one signed amount and a balance'] ?? '';
  const files: Readonly<Record<string, readonly [string, string, string]>> = {
    'OFX that was cut off': [ofxSample(1).slice(0, 500), 'OFX', 'tags that do not close'],
    'OFX 2 that was cut off': [ofxSample(2).slice(0, 700), 'OFX', 'tags that do not close'],
    'OFX in another currency': [ofxSample(1, 'EUR'), 'CURDEF', 'EUR'],
    'OFX of several accounts': [
      ofxSample(2).replace(/<STMTRS>.*<\/STMTRS>/s, (one) => one + one.replace('999988', '777766')),
      'account',
      '2 accounts: …9988, …7766',
    ],
    'an amount that is none': [ofxSample(1).replace('201.00', '2O1.00'), 'TRNAMT', '2O1.00'],
    'a day that does not exist': [
      ofxSample(2).replace('20270304', '20270230'),
      'DTPOSTED',
      '20270230120000[-5:EST]',
    ],
    'camt.053 that was cut off': [camtSample().slice(0, 900), 'XML', 'tags that do not close'],
    'camt.053 in another currency': [camtSample('EUR'), 'Amt', '201.00 EUR'],
    'entities inside entities': [
      bomb.replace('201.00', '&l8;'),
      'XML',
      'a document type or entities',
    ],
    'another sort of XML': ['<?xml version="1.0"?><html></html>', 'Document', 'no statement'],
    'a formula for an amount': [first.replace('201.00', '=1+1'), 'Amount', '=1+1'],
    'a CSV that was cut off': [first.slice(0, -20), '', '2 of 4 cells: 03/05/2027, LARKMEAD GROWE'],
    'days that could be read two ways': ['Date,Amount\n03/04/2027,5', 'Date', '03/04/2027'],
    'no amounts': ['Date,Memo\n2027-03-04,x', '', 'Date, Memo'],
    nothing: ['', '', 'no line with column names'],
    'no text': ['PK\0\u0003', '', 'a file that is no text'],
  };
  it.each(Object.entries(files))('%s', (_, [text, field, said]) => {
    expect(readBankFile(text, 'USD')).toMatchObject({ ok: false, refusal: { field, said } });
  });

  it('how the days are written may be said', () => {
    const text = 'Date,Amount\n03/04/2027,5';
    const read = readBankFile(text, 'USD', { days: 'day-month-year' });
    expect(read).toMatchObject({ value: { lines: [{ date: '2027-04-03' }] } });
  });
});
