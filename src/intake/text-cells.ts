import Papa from 'papaparse';

/**
 * The cells of pasted text, row by row: tabs, commas or semicolons, quotes as in RFC 4180. Never
 * fails. Apart from what reads them, so that the app fetches the reader once something is pasted.
 */
export function textCells(text: string): readonly (readonly string[])[] {
  return Papa.parse<string[]>(text.replace(/^\uFEFF/u, ''), {
    delimiter: delimiterOf(text),
    skipEmptyLines: false,
  }).data;
}

/** A tab wins wherever there is one; else whichever of ; and , comes more often outside quotes. */
function delimiterOf(text: string): string {
  const bare = text.replace(/"(?:[^"]|"")*"/gu, '');
  if (bare.includes('\t')) return '\t';
  return bare.split(';').length > bare.split(',').length ? ';' : ',';
}
