import type { BookRecord } from '../records/record.ts';

/** The largest number that a record itself says, with its path. */
export function largestAmount(record: BookRecord): [field: string, amount: number] {
  let found: [string, number] = ['', 0];
  const look = (value: unknown, path: string) => {
    if (typeof value === 'number' && value > found[1]) found = [path, value];
    if (typeof value !== 'object' || value === null) return;
    for (const [key, part] of Object.entries(value))
      look(part, path === '' ? key : `${path}.${key}`);
  };
  look(record, '');
  return found;
}
