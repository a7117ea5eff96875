import type { BookRecord } from '../../records/record.ts';
import { type LookData, RecordLook } from './record-look.ts';

/** The records of a part that stand on its tape, as plain data that other threads may share. */
export interface TapeData {
  /** How many records the part has. */
  readonly size: number;
  /** By place in the part: a place of the tape; below 0 for a record that only the part has. */
  readonly keptAt: Int32Array;
  readonly look: LookData;
}

/** The records that another thread has read and put on its tape. */
export class TapeRecords {
  readonly size: number;
  readonly #keptAt: Int32Array;
  readonly #look: RecordLook;

  constructor({ size, keptAt, look }: TapeData) {
    this.size = size;
    this.#keptAt = keptAt;
    this.#look = RecordLook.over(look);
  }

  /** The record at a place, to be used and not kept; undefined where it does not stand there. */
  onTape(place: number): BookRecord | undefined {
    const keptAt = this.#keptAt[place] ?? -1;
    return keptAt < 0 ? undefined : this.#look.recordAt(keptAt);
  }
}
