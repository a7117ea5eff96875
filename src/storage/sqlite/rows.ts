import type { SQLOutputValue } from 'node:sqlite';

/**
 * Rows as the tables promise them. A damaged file may hold anything, so a value of another type
 * becomes an empty one, which then fails its seal instead of stopping the reader.
 */
export interface RecordRow {
  readonly group: string;
  readonly arrival: number;
  readonly season: string;
  readonly id: string;
  readonly text: string;
  readonly seal: Uint8Array;
  readonly groupDigest: Uint8Array;
}

type Raw = Record<string, SQLOutputValue>;

export const RECORD_COLUMNS = 'book_group, arrival, season, id, text, seal, group_digest';

export function recordRow(raw: Raw): RecordRow {
  return {
    group: textOf(raw.book_group),
    arrival: wholeOf(raw.arrival),
    season: textOf(raw.season),
    id: textOf(raw.id),
    text: textOf(raw.text),
    seal: bytesOf(raw.seal),
    groupDigest: bytesOf(raw.group_digest),
  };
}

export function textOf(value: SQLOutputValue | undefined): string {
  return typeof value === 'string' ? value : '';
}

export function wholeOf(value: SQLOutputValue | undefined): number {
  return typeof value === 'number' ? value : 0;
}

export function bytesOf(value: SQLOutputValue | undefined): Uint8Array {
  return value instanceof Uint8Array ? value : new Uint8Array();
}

export function damagedLine({ id, arrival, group }: Pick<RecordRow, 'id' | 'arrival' | 'group'>) {
  return `record ${id} (arrival ${arrival} of group ${group}) is damaged`;
}
