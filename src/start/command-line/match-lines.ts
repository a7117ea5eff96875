import type { Ledger } from '../../ledger/ledger.ts';
import { recordSentence } from '../../statements/record-sentence.ts';
import { english } from '../../words/english.ts';

/** A record with its day and its sentence; an id that the book lacks is its own name. */
export function recordLine(id: string, ledger: Ledger): string {
  const record = ledger.standing.get(id);
  if (record === undefined) return id;
  return `${'date' in record ? record.date : ''}  ${recordSentence(record, ledger, english)}`;
}

/** A titled part of an answer; nothing where it has no items. */
export function matchPart(title: string, items: readonly string[]): string[] {
  return items.length === 0 ? [] : ['', title, ...items.map((item) => `▲ ${item}`)];
}
