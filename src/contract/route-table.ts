import type { TObject } from 'typebox';
import { FILE_BODY_MAX_BYTES, JSON_BODY_MAX_BYTES } from './limits.ts';
import {
  BookPath,
  BooksQuery,
  NoQuery,
  type namedShapes,
  PaperAboutPath,
  PaperPath,
  PaperQuery,
  RecordsQuery,
} from './shapes.ts';

/**
 * Every route of the server, once: the server registers these and no others, checks requests by
 * them, and describes itself from them. A row without a handler does not compile.
 */

type ShapeName = keyof typeof namedShapes;

/** The media type of a book file: JSON Lines. */
export const BOOK_FILE_TYPE = 'application/jsonl';

export interface Route {
  readonly method: 'get' | 'post';
  /** With `{name}` for what changes, as OpenAPI writes it. */
  readonly path: string;
  readonly summary: string;
  /** Who may ask: `key` before there is a session, `session` after. */
  readonly who: 'key' | 'session';
  readonly inPath: TObject;
  readonly inQuery: TObject;
  readonly body?: {
    readonly type: 'application/json' | typeof BOOK_FILE_TYPE;
    /** Named for JSON; a book file is read line by line by intake. */
    readonly shape?: ShapeName;
    readonly bytesMax: number;
  };
  readonly answer: {
    readonly status: 200 | 201;
    readonly type: 'application/json' | typeof BOOK_FILE_TYPE | 'application/pdf';
    readonly shape?: ShapeName;
  };
  /** What it may answer besides what every route may (400, 401, 403, 405, 500). */
  readonly errors: readonly (404 | 409 | 413 | 415 | 422 | 503 | 507)[];
}

const noPath = NoQuery;
const json = (shape: ShapeName) => ({
  type: 'application/json' as const,
  shape,
  bytesMax: JSON_BODY_MAX_BYTES,
});
const answer = (shape: ShapeName, status: 200 | 201 = 200) => ({
  status,
  type: 'application/json' as const,
  shape,
});

export const routeTable = {
  signIn: {
    method: 'post',
    path: '/api/session',
    summary: 'Changes the one-time key of the printed address for a session cookie.',
    who: 'key',
    inPath: noPath,
    inQuery: NoQuery,
    body: json('SessionRequest'),
    answer: answer('SessionAnswer'),
    errors: [413, 415],
  },
  signOut: {
    method: 'post',
    path: '/api/session/end',
    summary: 'Ends the session: its cookie opens nothing from then on.',
    who: 'session',
    inPath: noPath,
    inQuery: NoQuery,
    answer: answer('SessionAnswer'),
    errors: [],
  },
  listBooks: {
    method: 'get',
    path: '/api/books',
    summary: 'The books kept here, and damage that was found at start; of one alone its records.',
    who: 'session',
    inPath: noPath,
    inQuery: BooksQuery,
    answer: answer('BooksAnswer'),
    errors: [],
  },
  startBook: {
    method: 'post',
    path: '/api/books',
    summary: 'Starts a book: empty, or with the made-up demo season.',
    who: 'session',
    inPath: noPath,
    inQuery: NoQuery,
    body: json('NewBook'),
    answer: answer('Header', 201),
    errors: [409, 413, 415, 503, 507],
  },
  readRecords: {
    method: 'get',
    path: '/api/books/{group}/{season}/records',
    summary: 'Records that arrived after a number, in order of arrival.',
    who: 'session',
    inPath: BookPath,
    inQuery: RecordsQuery,
    answer: answer('RecordsAnswer'),
    errors: [404],
  },
  appendRecords: {
    method: 'post',
    path: '/api/books/{group}/{season}/records',
    summary: 'Adds records, all of them or none. Sending the same again changes nothing.',
    who: 'session',
    inPath: BookPath,
    inQuery: NoQuery,
    body: json('AppendRequest'),
    answer: answer('AppendAnswer'),
    errors: [404, 409, 413, 415, 422, 503, 507],
  },
  exportFile: {
    method: 'get',
    path: '/api/books/{group}/{season}/file',
    summary: 'The whole book as a book file (JSON Lines).',
    who: 'session',
    inPath: BookPath,
    inQuery: NoQuery,
    answer: { status: 200, type: BOOK_FILE_TYPE },
    errors: [404],
  },
  importFile: {
    method: 'post',
    path: '/api/books/{group}/{season}/file',
    summary:
      'Adds the records of a book file, all of them or none; makes the book where it is new.',
    who: 'session',
    inPath: BookPath,
    inQuery: NoQuery,
    body: { type: BOOK_FILE_TYPE, bytesMax: FILE_BODY_MAX_BYTES },
    answer: answer('AppendAnswer'),
    errors: [409, 413, 415, 422, 503, 507],
  },
  printPaper: {
    method: 'get',
    path: '/api/books/{group}/{season}/papers/{paper}.pdf',
    summary: 'A paper about the whole book, as a tagged PDF.',
    who: 'session',
    inPath: PaperPath,
    inQuery: PaperQuery,
    answer: { status: 200, type: 'application/pdf' },
    errors: [404],
  },
  printPaperAbout: {
    method: 'get',
    path: '/api/books/{group}/{season}/papers/{paper}/{about}.pdf',
    summary: 'A paper about one family, record or stall, as a tagged PDF.',
    who: 'session',
    inPath: PaperAboutPath,
    inQuery: PaperQuery,
    answer: { status: 200, type: 'application/pdf' },
    errors: [404],
  },
  describe: {
    method: 'get',
    path: '/api/openapi.json',
    summary: 'This description (OpenAPI 3.1).',
    who: 'session',
    inPath: noPath,
    inQuery: NoQuery,
    answer: { status: 200, type: 'application/json' },
    errors: [],
  },
} as const satisfies Record<string, Route>;

export type RouteName = keyof typeof routeTable;
