import type { BookRecord } from '../../records/record.ts';
import { BookReader } from '../read-book.ts';
import { readRecord } from '../read-record.ts';

/**
 * The lines that a quick look is not sure of, read the slow way. Apart from the look, because most
 * books have none: what the slow way is made of is then never loaded.
 */

/** True where a line, with its end, is a header that nothing refuses. */
export function isGoodHeader(line: Uint8Array): boolean {
  const reader = new BookReader();
  reader.push(line);
  const { header, findings } = reader.end();
  return header !== undefined && !findings.some(({ severity }) => severity === 'error');
}

/** The record of a line without its end; undefined where the line is not a good one. */
export function recordOfLine(line: Uint8Array): BookRecord | 'nothing' | undefined {
  try {
    const whole = strict.decode(line);
    if (whole.trim() === '') return 'nothing';
    const text = whole.endsWith('\r') ? whole.slice(0, -1) : whole;
    // What the line number would be told with is not told from here.
    return readRecord(JSON.parse(text), 0, text).record;
  } catch {
    return undefined;
  }
}

const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
