/**
 * A paper as plain data: what is printed, in reading order, with every number already a text.
 * One shape for all papers, so that the PDF and the app's print view draw them alike. No pixels
 * here, and no sums: numbers come from questions.
 */
export interface Paper {
  /** A name for the file, of a-z, 0-9 and -, without an ending. */
  readonly fileName: string;
  /** BCP 47 tag of the words (names may be in any script). */
  readonly language: string;
  readonly title: string;
  /** The group and the season, above the title. */
  readonly over: string;
  readonly facts: readonly Fact[];
  readonly blocks: readonly Block[];
  /** What every page's foot says beside the page number. */
  readonly foot: string;
  /** The page number with `{page}` and `{pages}` where the numbers go: `Page {page} of {pages}`. */
  readonly pageOf: string;
}

/** A label and what it is for this paper: `Day · 12 Mar 2027`. */
export interface Fact {
  readonly label: string;
  readonly value: string;
}

export type Block =
  /** The one thing to read, larger than the rest. */
  | { readonly block: 'lead'; readonly text: string }
  | { readonly block: 'heading'; readonly text: string }
  | { readonly block: 'words'; readonly text: string }
  | TableBlock
  /** Places to sign: each a label over a line for name, signature and day. */
  | { readonly block: 'signatures'; readonly places: readonly SignaturePlace[] };

export interface TableBlock {
  readonly block: 'table';
  readonly columns: readonly Column[];
  /** One text a column. */
  readonly rows: readonly (readonly string[])[];
  /** Rows that sum the others up, set apart by a line. */
  readonly totals?: readonly (readonly string[])[];
  /** True for a short table that need not be as wide as the page. */
  readonly narrow?: boolean;
  /** True for boxes of a small height, where a long sheet has to stay on one page. */
  readonly tight?: boolean;
}

export interface Column {
  readonly head: string;
  /** `number` lines up at the end in tabular figures, `box` is an empty box to write in. */
  readonly shows: 'text' | 'number' | 'box';
}

export interface SignaturePlace {
  readonly label: string;
  /** Labels of the lines to fill in: name, signature, day. */
  readonly lines: readonly string[];
}
