import { shortSaid } from '../../../intake/finding.ts';
import type { FileRefusal } from '../../../intake/table/file-refusal.ts';
import { say } from '../../say.ts';

/** Why a file was not taken: where, what was said, what is wanted. */
export function refusalWords({ line, field, said, wanted }: FileRefusal, name: string): string {
  const where = [name, ...(line > 0 ? [say`line ${line}`] : []), ...(field === '' ? [] : [field])];
  return say`${where.join(say`, `)}: it says ${shortSaid(said)}, wanted is ${say.told(wanted)}.`;
}
