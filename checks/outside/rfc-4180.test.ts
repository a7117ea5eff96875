import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { csvText } from '../../src/statements/export-csv.ts';

/**
 * RFC 4180, section 2: the examples of its rules 1 to 7, read by the reader and written by ours.
 */
const examples: readonly (readonly [rule: string, text: string, rows: string[][]])[] = [
  [
    '1: records end in CRLF',
    'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '2: the last may go without',
    'aaa,bbb,ccc\r\nzzz,yyy,xxx',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '5: fields in quotes',
    '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '6: line breaks in quotes',
    '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
    [
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  ['7: quotes are doubled', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
];

function read(text: string): string[][] {
  return Papa.parse<string[]>(text, { skipEmptyLines: true }).data;
}

describe('RFC 4180', () => {
  it.each(examples)('rule %s', (_rule, text, rows) => {
    expect(read(text)).toEqual(rows);
    expect(read(csvText(rows))).toEqual(rows);
  });

  it('our writer ends every record in CRLF and quotes only where a rule asks for it', () => {
    expect(
      csvText([
        ['aaa', 'b\r\nbb', 'ccc'],
        ['b"bb', 'x,y', 'zzz'],
      ]),
    ).toBe('aaa,"b\r\nbb",ccc\r\n"b""bb","x,y",zzz\r\n');
  });

  it('rule 4: spaces are part of a field', () => {
    expect(read(csvText([[' aaa', 'bbb ', ' ']]))).toEqual([[' aaa', 'bbb ', ' ']]);
  });
});
