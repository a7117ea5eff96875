import { goodBook, idOf, type Line, lineOf } from './good-book.ts';

/** A book file with one thing wrong, and what is to be said about it. */
export interface BrokenFile {
  readonly group: string;
  readonly name: string;
  readonly line: number;
  readonly field: string;
  /** Made when it is needed: some are large. */
  bytes(): Iterable<Uint8Array>;
}

const encoder = new TextEncoder();

export function textOf(lines: readonly unknown[]): string {
  return lines
    .map((line) => `${typeof line === 'string' ? line : JSON.stringify(line)}\n`)
    .join('');
}

/** @param make the whole text, from the lines of the good book */
export function brokenText(
  group: string,
  name: string,
  line: number,
  field: string,
  make: (lines: string[]) => string,
): BrokenFile {
  const bytes = () => [encoder.encode(make(goodBook.map((each) => JSON.stringify(each))))];
  return { group, name, line, field, bytes };
}

export function brokenBytes(
  group: string,
  name: string,
  line: number,
  bytes: (good: Uint8Array) => Iterable<Uint8Array>,
): BrokenFile {
  const good = () => encoder.encode(textOf(goodBook));
  return { group, name, line, field: '', bytes: () => bytes(good()) };
}

/** One line of the good book put another way. */
export function brokenLine(
  group: string,
  name: string,
  line: number,
  field: string,
  change: (text: string) => string,
): BrokenFile {
  return brokenText(group, name, line, field, (lines) =>
    textOf(lines.map((text, index) => (index === line - 1 ? change(text) : text))),
  );
}

/** The first record of a kind with other fields; `undefined` leaves a field out. */
export function brokenRecord(group: string, kind: string, change: Line, field: string): BrokenFile {
  const line = lineOf(kind);
  const name = `${kind} with ${describe(change)}`;
  return brokenLine(group, name, line, field, (text) =>
    JSON.stringify({ ...JSON.parse(text), ...change }),
  );
}

/** A record's JSON text with a part replaced, for what no value can say (1e400, a field twice). */
export function brokenJson(
  group: string,
  kind: string,
  from: string,
  to: string,
  field: string,
): BrokenFile {
  const name = `${kind} with ${to.slice(0, 60)}`;
  return brokenLine(group, name, lineOf(kind), field, (text) => {
    if (!text.includes(from)) throw new Error(`the ${kind} of the good book has no ${from}`);
    return text.replace(from, () => to);
  });
}

/** The good book with one more record at its end. */
export function brokenExtra(group: string, name: string, record: Line, field: string): BrokenFile {
  const line = goodBook.length + 1;
  const common = { id: idOf(line), at: '2027-02-07T18:00:00.000Z', by: 'manager' };
  return brokenText(group, name, line, field, (lines) =>
    textOf([...lines, { ...common, ...record }]),
  );
}

function describe(change: Line): string {
  const parts = Object.entries(change).map(([field, value]) =>
    value === undefined ? `no ${field}` : `${field} ${JSON.stringify(value)}`,
  );
  const text = parts.join(', ');
  return text.length > 70 ? `${text.slice(0, 69)}…` : text;
}
