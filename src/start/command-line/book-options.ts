import type { OptionTable } from './read-arguments.ts';

/** Which book of a store file that holds several. */
export const bookOptions: OptionTable = {
  group: { type: 'string' },
  season: { type: 'string' },
};

export const BOOK_HELP = `BOOK is a book file (JSON Lines), - for standard input, or a store file;
  where a store file holds several books: --group ID --season ID`;
