import { canonicalText } from '../base/canonical-text.ts';
import { IdTable } from '../base/id-table.ts';
import { BOOK_VERSION, type Header } from '../records/header.ts';
import type { BookRecord } from '../records/record.ts';
import { holdsCardNumber } from './card-text.ts';
import { type Finding, saidOf } from './finding.ts';
import { FindingList } from './finding-list.ts';
import { examineJsonText } from './json-text.ts';
import { cleanRecord, readRecord } from './read-record.ts';
import { headerForm, isHeader } from './record-form.ts';
import { schemaFindings } from './schema-findings.ts';
import { BOOK_MAX, LINE_MAX, type LineFault, type LineListener, TextLines } from './text-lines.ts';
import { partFindings } from './unknown-parts.ts';

/**
 * A book file (JSON Lines: the header, then one record a line) to its records and to findings.
 * Never throws, whatever the bytes. A file with any error is to be refused whole; what was readable
 * is handed over all the same, so that its findings can be complete.
 */
export interface BookRead {
  /** Undefined where the file is not a book that this version reads. */
  readonly header: Header | undefined;
  /** In the order of the file; a record that stands there twice word for word is here once. */
  readonly records: BookRecord[];
  /** The place in `records` of each id, to be handed on: an index of many ids is dear to make. */
  readonly places: IdTable;
  /** The line of each record, in step with `records`. */
  readonly lines: readonly number[];
  readonly findings: readonly Finding[];
  /** How many findings there were beyond those kept. */
  readonly omitted: number;
}

const NEAR_WHOLE = 60;

export type BookSource = string | Iterable<Uint8Array>;

export function readBook(source: BookSource): BookRead {
  const reader = new BookReader();
  if (typeof source === 'string') reader.pushText(source);
  else for (const bytes of source) reader.push(bytes);
  return reader.end();
}

/** Reads a book as its bytes come in, for sources that are waited for. */
export class BookReader implements LineListener {
  readonly #lines = new TextLines(this);
  readonly #findings = new FindingList();
  readonly #records: BookRecord[] = [];
  readonly #lineOf: number[] = [];
  readonly #places = new IdTable();
  #header: Header | undefined;
  #isBook = true;
  /** The first of the empty lines since the last record. */
  #emptyLine: number | undefined;

  push(bytes: Uint8Array): void {
    if (this.#isBook) this.#lines.push(bytes);
  }

  /** Takes the whole text at once. */
  pushText(text: string): void {
    if (!text.isWellFormed()) this.#halfCharacter(text);
    this.push(new TextEncoder().encode(text));
  }

  end(): BookRead {
    if (this.#isBook) this.#lines.end();
    if (this.#header === undefined && !this.#findings.hasErrors) {
      this.#error(1, '', undefined, `a header: {"book":"${BOOK_VERSION}","group":…,"season":…}`);
    }
    return {
      header: this.#header,
      records: this.#records,
      places: this.#places,
      lines: this.#lineOf,
      findings: this.#findings.inOrder(),
      omitted: this.#findings.omitted,
    };
  }

  line(text: string, line: number, isWhole: boolean): void {
    if (!this.#isBook) return;
    if (line === 1) this.#headerLine(text);
    else if (text.trim() === '') this.#emptyLine ??= line;
    else this.#recordLine(text, line, isWhole);
  }

  fault(fault: LineFault, line: number): void {
    if (!this.#isBook) return;
    this.#error(line, '', faultSaid(fault), faultWanted(fault));
    if (line === 1 || fault.name === 'file_too_long') this.#isBook = false;
  }

  #recordLine(text: string, line: number, isWhole: boolean): void {
    this.#tellEmptyLine();
    const value = this.#parse(text, line, isWhole);
    if (value === undefined) return;
    const clean = cleanRecord(value, text);
    if (clean !== undefined) {
      this.#take(clean, line);
      return;
    }
    if (isHeaderLike(value)) {
      this.#error(line, 'book', BOOK_VERSION, 'one header, on line 1');
      return;
    }
    const { record, findings } = readRecord(value, line, text);
    this.#findings.add(...findings);
    if (record !== undefined) this.#take(record, line);
  }

  #take(record: BookRecord, line: number): void {
    if (this.#places.add(record.id) !== undefined) {
      this.#records.push(record);
      this.#lineOf.push(line);
      return;
    }
    const place = this.#places.placeOf(record.id) ?? 0;
    if (canonicalText(this.#records[place]) !== canonicalText(record)) {
      const first = this.#lineOf[place];
      const wanted = `an id of its own: line ${first} has this id with other content`;
      this.#error(line, 'id', record.id, wanted, record.id);
    }
  }

  #parse(text: string, line: number, isWhole: boolean): unknown {
    try {
      return JSON.parse(text) ?? null;
    } catch (error) {
      this.#error(line, '', nearFault(text, error), wantedText(text, isWhole));
      return undefined;
    }
  }

  /** Empty lines at the end are fine; between records they may be a sign of lost ones. */
  #tellEmptyLine(): void {
    const line = this.#emptyLine;
    if (line === undefined) return;
    this.#emptyLine = undefined;
    const wanted = 'a record on every line; look whether one is missing here';
    this.#findings.add({ line, field: '', said: '', wanted, severity: 'warning' });
  }

  #headerLine(text: string): void {
    const hasMark = text.startsWith('\uFEFF');
    const body = hasMark ? text.slice(1) : text;
    if (hasMark) {
      const wanted = 'UTF-8 without a byte-order mark; it is left out';
      this.#findings.add({
        line: 1,
        field: '',
        said: 'a byte-order mark',
        wanted,
        severity: 'warning',
      });
    }
    const value = body.trim() === '' ? undefined : this.#parse(body, 1, true);
    if (value === undefined) {
      if (!this.#findings.hasErrors) this.#noHeader(body);
      this.#isBook = false;
      return;
    }
    if (!isHeaderLike(value)) {
      this.#noHeader(value);
      this.#isBook = false;
      return;
    }
    this.#readHeader(value, body);
  }

  #noHeader(said: unknown): void {
    const wanted = `a header: {"book":"${BOOK_VERSION}","group":…,"season":…}`;
    this.#error(1, 'book', saidOf(said), wanted);
  }

  #readHeader(value: object, text: string): void {
    const examined = examineJsonText(text);
    const findings = [
      ...schemaFindings(headerForm(), value, { line: 1 }, examined.written),
      ...partFindings(value, headerForm().fields, { line: 1 }),
      ...examined.faults.map((fault) => ({ line: 1, ...fault, severity: 'error' }) as const),
    ];
    this.#findings.add(...findings);
    if (isHeader(value)) this.#header = value;
    // Another version may mean anything by its lines: nothing is guessed about them.
    else this.#isBook = !findings.some((finding) => finding.field === 'book');
  }

  /** Encoding would put another character in its place without a word. */
  #halfCharacter(text: string): void {
    const lines = text.split('\n');
    const line = lines.findIndex((each) => !each.isWellFormed()) + 1;
    this.#error(line, '', saidOf(lines[line - 1]), 'text without half characters');
  }

  #error(line: number, field: string, said: unknown, wanted: string, record?: string): void {
    const place = record === undefined ? { line } : { line, record };
    this.#findings.add({ ...place, field, said, wanted, severity: 'error' });
  }
}

function isHeaderLike(value: unknown): value is object {
  return typeof value === 'object' && value !== null && 'book' in value && !('kind' in value);
}

/** The text about the place where it stops being JSON, so that it can be found. */
function nearFault(text: string, error: unknown): unknown {
  if (text.length <= NEAR_WHOLE || holdsCardNumber(text)) return saidOf(text);
  const at = /position (\d+)/.exec(error instanceof Error ? error.message : '')?.[1];
  const start = at === undefined ? text.length : Number(at);
  return `…${text.slice(Math.max(0, start - 40), start + 20).toWellFormed()}`;
}

function wantedText(text: string, isWhole: boolean): string {
  if (text.includes('\0')) return 'UTF-8 text without NUL characters';
  return isWhole
    ? 'one JSON object on the line, from { to }'
    : 'a whole record: the file was cut off here, so take it again from where it came';
}

function faultSaid(fault: LineFault): unknown {
  switch (fault.name) {
    case 'line_too_long':
      return `more than ${LINE_MAX} characters`;
    case 'file_too_long':
      return `more than ${BOOK_MAX} bytes`;
    case 'not_utf8':
      return saidOf(fault.near);
    case 'utf16':
      return 'UTF-16 text';
  }
}

function faultWanted(fault: LineFault): string {
  switch (fault.name) {
    case 'line_too_long':
      return `a line of at most ${LINE_MAX} characters`;
    case 'file_too_long':
      return `a file of at most ${BOOK_MAX} bytes`;
    default:
      return 'UTF-8 text: save the file again with the encoding UTF-8';
  }
}
