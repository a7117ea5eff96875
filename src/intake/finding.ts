/**
 * What is not right about something that was read: where it is, what was said, what is wanted.
 * Findings are data; a reader collects as many as it can and never stops at the first.
 */
export interface Finding {
  /** Line of the text, from 1; for a single request, its place in the list from 1. */
  readonly line: number;
  /** The record's id where it has a readable one. */
  readonly record?: string;
  /** The path of the field, like `lines.honey`; empty for the line as a whole. */
  readonly field: string;
  /** What was there, shortened to fit one line. */
  readonly said: unknown;
  /** What is wanted, in words for a person. */
  readonly wanted: string;
  /** An error refuses the whole text; a warning is only told. */
  readonly severity: 'error' | 'warning';
}

const SAID_MAX = 80;

/** What was said, short enough for one line and without line breaks or control characters. */
export function shortSaid(said: unknown): string {
  const text = said === undefined ? 'nothing' : (JSON.stringify(said) ?? String(said));
  const oneLine = text.replace(/\p{Cc}+/gu, ' ');
  return oneLine.length > SAID_MAX ? `${oneLine.slice(0, SAID_MAX - 1)}…` : oneLine;
}

/** A finding as one line: `book.jsonl, line 7, lines.honey: said -3, wanted a whole number…`. */
export function findingLine(finding: Finding, source: string): string {
  const field = finding.field === '' ? '' : `, ${finding.field}`;
  const said = shortSaid(finding.said);
  return `${source}, line ${finding.line}${field}: said ${said}, wanted ${finding.wanted}`;
}
