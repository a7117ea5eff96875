import type { BookRecord } from '../../records/record.ts';
import { recordSentence } from '../../statements/record-sentence.ts';
import { useBook } from '../book.ts';
import { say } from '../say.ts';

/** A record as a sentence that opens the record's page. */
export function Sentence({ record }: { readonly record: BookRecord | undefined }) {
  const { ledger } = useBook();
  if (record === undefined) return null;
  return <a href={`/records/${record.id}`}>{recordSentence(record, ledger, say)}</a>;
}
