import Type, { type TSchema } from 'typebox';
import { ShortId } from '../records/fields.ts';
import { Header } from '../records/header.ts';
import type { BookRecord } from '../records/record.ts';
import { APPEND_MAX_RECORDS, PAGE_MAX_RECORDS } from './limits.ts';

/**
 * Requests and answers as JSON Schema: what the server checks and what the description says.
 * The same shapes as plain types, for the app, are in api.ts; shapes.test.ts holds the two equal.
 * Requests refuse fields they do not know; answers may grow.
 */

const closed = { additionalProperties: false };

/** A record within a request or an answer: its schemas are those of the book, named once. */
const AnyRecord = Type.Unsafe<BookRecord>(Type.Ref('BookRecord'));
const Arrival = Type.Integer({
  minimum: 0,
  maximum: Number.MAX_SAFE_INTEGER,
  wanted: 'a whole number, 0 or more',
});

export const SessionRequest = Type.Object(
  {
    key: Type.String({
      minLength: 1,
      maxLength: 200,
      wanted: 'the key from the printed address',
    }),
  },
  closed,
);

export const SessionAnswer = Type.Object({ signedIn: Type.Boolean() });

export const NewBook = Type.Object(
  {
    group: ShortId,
    season: ShortId,
    start: Type.Union([Type.Literal('empty'), Type.Literal('demo')], { wanted: 'empty or demo' }),
  },
  closed,
);

export const RecordsAnswer = Type.Object({
  records: Type.Array(Type.Object({ arrival: Arrival, record: AnyRecord })),
  last: Arrival,
});

export const BooksAnswer = Type.Object({
  books: Type.Array(Header),
  damage: Type.Array(Type.String()),
  records: Type.Optional(RecordsAnswer),
});

export const AppendRequest = Type.Object(
  {
    records: Type.Array(AnyRecord, {
      minItems: 1,
      maxItems: APPEND_MAX_RECORDS,
      wanted: `1 to ${APPEND_MAX_RECORDS} records`,
    }),
  },
  closed,
);

export const AppendAnswer = Type.Object({
  added: Type.Array(Type.Object({ arrival: Arrival, id: Type.String() })),
  already: Type.Array(Type.String()),
});

export const FindingShape = Type.Object({
  line: Type.Integer({ minimum: 0 }),
  record: Type.Optional(Type.String()),
  field: Type.String(),
  said: Type.Unknown(),
  wanted: Type.String(),
  severity: Type.Union([Type.Literal('error'), Type.Literal('warning')]),
});

export const ErrorAnswer = Type.Object({
  name: Type.String(),
  message: Type.String(),
  findings: Type.Optional(Type.Array(FindingShape)),
  reference: Type.Optional(Type.String()),
});

export const BookPath = Type.Object({ group: ShortId, season: ShortId }, closed);

export const BooksQuery = Type.Object({ with: Type.Optional(Type.Literal('records')) }, closed);

export const RecordsQuery = Type.Object(
  {
    after: Type.Optional(
      Type.String({ pattern: '^\\d{1,15}$', wanted: 'an arrival number, 0 or more' }),
    ),
    limit: Type.Optional(
      Type.String({ pattern: '^[1-9]\\d{0,4}$', wanted: `a number from 1 to ${PAGE_MAX_RECORDS}` }),
    ),
  },
  closed,
);

/** Names of papers and of what they are about: ids of the book, or the id of a record. */
const PaperName = Type.String({ pattern: '^[a-z-]{1,40}$', wanted: 'the name of a paper' });
const About = Type.String({ pattern: '^[A-Za-z0-9-]{1,64}$', wanted: 'an id of the book' });

export const PaperPath = Type.Object({ ...BookPath.properties, paper: PaperName }, closed);
export const PaperAboutPath = Type.Object({ ...PaperPath.properties, about: About }, closed);

export const PaperQuery = Type.Object(
  {
    paper: Type.Optional(
      Type.Union([Type.Literal('a4'), Type.Literal('letter')], { wanted: 'a4 or letter' }),
    ),
  },
  closed,
);

export const NoQuery = Type.Object({}, closed);

/** The shapes that the description names, by the name it gives them. */
export const namedShapes = {
  Header,
  Finding: FindingShape,
  SessionRequest,
  SessionAnswer,
  BooksAnswer,
  NewBook,
  RecordsAnswer,
  AppendRequest,
  AppendAnswer,
  ErrorAnswer,
} as const satisfies Record<string, TSchema>;
