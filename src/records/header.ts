import Type from 'typebox';
import { Instant, ShortId } from './fields.ts';

export const BOOK_VERSION = 'cratebook/1';

/** Line 1 of a book file: which book this is, and when it was written out. */
export const Header = Type.Object({
  book: Type.Literal(BOOK_VERSION, { wanted: `"${BOOK_VERSION}"` }),
  group: ShortId,
  season: ShortId,
  exported: Type.Optional(Instant),
});
export type Header = Type.Static<typeof Header>;
