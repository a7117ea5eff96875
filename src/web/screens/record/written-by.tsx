import type { BookRecord } from '../../../records/record.ts';
import { say } from '../../say.ts';

/** Who wrote a record and when, in Universal Time, which all devices share. */
export function WrittenBy({ record }: { readonly record: BookRecord }) {
  return (
    <>{say`by ${record.by}, ${say.day(record.at.slice(0, 10))}, ${record.at.slice(11, 16)} UTC`}</>
  );
}
