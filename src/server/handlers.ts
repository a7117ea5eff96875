import type { Context } from 'hono';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { AppendAnswer, BooksAnswer, NewBook, RecordsAnswer } from '../contract/api.ts';
import { PAGE_MAX_RECORDS } from '../contract/limits.ts';
import { BOOK_FILE_TYPE, type RouteName } from '../contract/route-table.ts';
import { type Finding, findingLine } from '../intake/finding.ts';
import { readBook } from '../intake/read-book.ts';
import { readRecord } from '../intake/read-record.ts';
import { writeBook } from '../intake/write-book.ts';
import type { Appended, BookName } from '../journal/journal.ts';
import { BOOK_VERSION, type Header } from '../records/header.ts';
import type { BookRecord } from '../records/record.ts';
import { acceptBook } from '../rules/accept-book.ts';
import { description } from './description.ts';
import type { KeptBook, Library, NotAppended } from './library.ts';
import { printPaper } from './papers.ts';
import { type Problem, problem } from './problem.ts';
import type { Sessions } from './sessions.ts';

/** Findings that one answer names; a broken file may have one a line. */
const FINDINGS_MAX = 200;

const DISK_FULL = 'The disk is full. Nothing was added. Free some space, then send it again.';
const DAMAGED = 'The store is damaged, so nothing is written.';

/** What the handlers need of the rest: given by start, so that tests can give their own. */
export interface ServerParts {
  readonly library: Library;
  readonly sessions: Sessions;
  /** Now, as RFC 3339 in UTC with milliseconds. */
  readonly instant: () => string;
  /** Today in the group's own time zone, as YYYY-MM-DD. */
  readonly today: () => string;
  /** The records of the made-up demo season. */
  readonly demo: () => readonly BookRecord[];
}

/** A request whose path, query and body fit the table of routes. */
export interface Asked {
  readonly context: Context;
  readonly path: Readonly<Record<string, string>>;
  readonly query: Readonly<Record<string, string>>;
  /** The JSON value, or the bytes of a book file. */
  readonly body: unknown;
}

export type Handler = (asked: Asked) => Promise<Outcome<Response, Problem>>;

type ByName = { readonly [name in RouteName]: Handler };

/** One handler a route of the table. They read and write and pass on; sums are made elsewhere. */
export function handlers(parts: ServerParts, signing: Pick<ByName, 'signIn' | 'signOut'>): ByName {
  const { library } = parts;
  const described = JSON.stringify(description());
  return {
    ...signing,
    listBooks: (asked) => listBooks(library, asked),
    startBook: (asked) => startBook(parts, asked),
    readRecords: withBook(library, readRecords),
    appendRecords: withBook(library, appendRecords),
    exportFile: withBook(library, (asked, book) => exportFile(asked, book, parts.instant())),
    importFile: (asked) => importFile(library, asked),
    printPaper: withBook(library, (asked, book) => sendPaper(asked, book, parts.today())),
    printPaperAbout: withBook(library, (asked, book) => sendPaper(asked, book, parts.today())),
    describe: async ({ context }) =>
      done(context.body(described, 200, { 'Content-Type': 'application/json' })),
  };
}

async function listBooks(library: Library, asked: Asked): Promise<Outcome<Response, Problem>> {
  const books = await library.store.books();
  const [first, ...others] = books;
  const only = asked.query.with === 'records' && others.length === 0 ? first : undefined;
  const book = only && (await library.find(only));
  const answer: BooksAnswer = {
    books,
    damage: library.store.damage,
    ...(book && { records: await recordsAfter(book, 0, PAGE_MAX_RECORDS) }),
  };
  return done(asked.context.json(answer));
}

type BookHandler = (asked: Asked, book: KeptBook) => Promise<Outcome<Response, Problem>>;

function withBook(library: Library, handle: BookHandler): Handler {
  return async (asked) => {
    const book = await library.find(bookNameOf(asked));
    if (book === undefined) {
      return refused(
        problem('no_such_book', 'There is no such book here. Choose one of the list.'),
      );
    }
    return handle(asked, book);
  };
}

function bookNameOf({ path }: Asked): BookName {
  return { group: path.group ?? '', season: path.season ?? '' };
}

async function startBook(parts: ServerParts, asked: Asked): Promise<Outcome<Response, Problem>> {
  // The body was checked against its schema before it came here.
  const { group, season, start } = asked.body as NewBook;
  if ((await parts.library.find({ group, season })) !== undefined) {
    const message = `There is already a book ${group} ${season}. Open it, or choose another name.`;
    return refused(problem('book_exists', message));
  }
  const book = await parts.library.make({ group, season });
  if (!book.ok) return refused(notAppended(book.refusal));
  if (start === 'demo') {
    const appended = await book.value.merge(parts.demo());
    if (!appended.ok) return refused(notAppended(appended.refusal));
  }
  const header: Header = { book: BOOK_VERSION, group, season };
  return done(asked.context.json(header, 201));
}

async function readRecords(asked: Asked, book: KeptBook): Promise<Outcome<Response, Problem>> {
  const after = Number(asked.query.after ?? 0);
  const most = Math.min(Number(asked.query.limit ?? PAGE_MAX_RECORDS), PAGE_MAX_RECORDS);
  return done(asked.context.json(await recordsAfter(book, after, most)));
}

async function recordsAfter(book: KeptBook, after: number, most: number): Promise<RecordsAnswer> {
  const records = await book.journal.readSince(after, most);
  return { records, last: records.at(-1)?.arrival ?? after };
}

async function appendRecords(asked: Asked, book: KeptBook): Promise<Outcome<Response, Problem>> {
  const records = recordsOf(asked.body);
  if (!records.ok) return refused(records.refusal);
  const appended = await book.append(records.value);
  if (!appended.ok) return refused(notAppended(appended.refusal));
  return done(asked.context.json(appendAnswer(appended.value)));
}

function recordsOf(body: unknown): Outcome<readonly BookRecord[], Problem> {
  // The envelope was checked against its schema; the records themselves are for intake.
  const { records: said } = body as { readonly records: readonly unknown[] };
  const records: BookRecord[] = [];
  const findings: Finding[] = [];
  for (const [index, value] of said.entries()) {
    const read = readRecord(value, index + 1);
    if (read.record !== undefined) records.push(read.record);
    findings.push(...read.findings.filter((finding) => finding.severity === 'error'));
  }
  return findings.length === 0 ? done(records) : refused(withFindings(findings));
}

function withFindings(findings: readonly Finding[]): Problem {
  const [first] = findings;
  const where = first === undefined ? '' : ` ${findingLine(first, 'First')}.`;
  const count = findings.length === 1 ? '1 thing is' : `${findings.length} things are`;
  const message = `${count} not right; nothing was added.${where}`;
  return problem('findings', message, { findings: findings.slice(0, FINDINGS_MAX) });
}

async function exportFile(
  asked: Asked,
  book: KeptBook,
  exported: string,
): Promise<Outcome<Response, Problem>> {
  const { group, season } = book.journal.book;
  const header: Header = { book: BOOK_VERSION, group, season, exported };
  const arrived = await book.journal.readSince(0);
  const text = writeBook(
    header,
    arrived.map((each) => each.record),
  );
  return done(
    asked.context.body([...text].join(''), 200, {
      'Content-Type': `${BOOK_FILE_TYPE}; charset=utf-8`,
      'Content-Disposition': `attachment; filename="${group}-${season}.jsonl"`,
    }),
  );
}

async function importFile(library: Library, asked: Asked): Promise<Outcome<Response, Problem>> {
  // A body that no shape names comes as its bytes.
  const read = readBook([asked.body as Uint8Array]);
  const name = bookNameOf(asked);
  const known = await library.find(name);
  const already = known === undefined ? [] : (await known.ledger()).standing.records();
  const accepted = acceptBook(read, already);
  if (!accepted.ok) return refused(withFindings(accepted.refusal));
  const { header, records } = accepted.value;
  if (header.group !== name.group || header.season !== name.season) {
    const message = `This file is the book ${header.group} ${header.season}. Add it to that one.`;
    return refused(problem('other_book', message));
  }
  const book = await library.make(name);
  if (!book.ok) return refused(notAppended(book.refusal));
  const appended = await book.value.merge(records);
  if (!appended.ok) return refused(notAppended(appended.refusal));
  return done(asked.context.json(appendAnswer(appended.value)));
}

async function sendPaper(
  asked: Asked,
  book: KeptBook,
  today: string,
): Promise<Outcome<Response, Problem>> {
  const printed = await printPaper(await book.ledger(), {
    name: asked.path.paper ?? '',
    about: asked.path.about ?? '',
    size: asked.query.paper === 'letter' ? 'letter' : 'a4',
    group: book.journal.book.group,
    today,
  });
  if (!printed.ok) return printed;
  return done(
    asked.context.body(printed.value.pdf, 200, {
      'Content-Type': 'application/pdf',
      'Content-Disposition': `inline; filename="${printed.value.fileName}.pdf"`,
    }),
  );
}

function appendAnswer(appended: Appended): AppendAnswer {
  const added = appended.added.map(({ arrival, record }) => ({ arrival, id: record.id }));
  return { added, already: appended.already };
}

function notAppended(refusal: NotAppended): Problem {
  switch (refusal.name) {
    case 'against_the_rules':
      return problem('against_the_rules', refusal.rule.message, { name: refusal.rule.name });
    case 'same_id_with_other_content': {
      const ids = refusal.ids.join(', ');
      const message = `Here with other content: ${ids}. Nothing was added. Tell the manager.`;
      return problem('same_id_with_other_content', message);
    }
    case 'store_is_full':
      return problem('store_is_full', DISK_FULL);
    case 'store_is_damaged':
      return problem('store_is_damaged', `${DAMAGED} ${refusal.detail}`);
  }
}
