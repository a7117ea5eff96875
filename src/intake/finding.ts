import { holdsCardNumber } from './card-text.ts';

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
  /** What was there, shortened to fit one line; undefined where nothing was. */
  readonly said: unknown;
  /** What is wanted, in words for a person. */
  readonly wanted: string;
  /** An error refuses the whole text; a warning is only told. */
  readonly severity: 'error' | 'warning';
}

const SAID_MAX = 80;
const FIELD_MAX = 120;
const HIDDEN = 'what looks like a payment card number';
const BREAKS = /[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_Control}]+/gu;

/** What was said, short enough for one line and without line breaks or control characters. */
export function shortSaid(said: unknown): string {
  const text = said === undefined ? 'nothing' : (JSON.stringify(said) ?? String(said));
  return cut(text.replace(BREAKS, ' '), SAID_MAX);
}

/** A finding as one line: `book.jsonl, line 7, lines.honey: said -3, wanted a whole number…`. */
export function findingLine(finding: Finding, source: string): string {
  const field = finding.field === '' ? '' : `, ${finding.field}`;
  const said = shortSaid(finding.said);
  return `${source}, line ${finding.line}${field}: said ${said}, wanted ${finding.wanted}`;
}

/**
 * What was there as a small value that is safe to show and to store: long text is cut, a list or
 * an object becomes words, and a card number is never repeated.
 */
export function saidOf(value: unknown): unknown {
  if (typeof value === 'string') return holdsCardNumber(value) ? HIDDEN : cut(value, SAID_MAX);
  if (typeof value === 'number')
    return holdsCardNumber(String(value)) ? HIDDEN : plainNumber(value);
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  return value;
}

/** A field's path as text, safe to show; a part that holds a card number is not repeated. */
export function fieldPath(parts: readonly (string | number)[]): string {
  const path = parts.join('.');
  return holdsCardNumber(path) ? HIDDEN : cut(path.replace(BREAKS, ' '), FIELD_MAX);
}

/** JSON has no infinity: it would be shown as null. */
function plainNumber(value: number): number | string {
  return Number.isFinite(value) ? value : String(value);
}

function cut(text: string, most: number): string {
  // A cut between the halves of a character would leave half of one behind.
  return text.length > most ? `${text.slice(0, most - 1).toWellFormed()}…` : text;
}
