import { closeSync, copyFileSync, existsSync, fstatSync, openSync, readSync } from 'node:fs';

/**
 * Looks at the log (`-wal`) that a crash left. SQLite takes a log up to the first frame whose
 * checksum fails and forgets the rest without a word: right after a power cut, when that frame was
 * being written, and wrong for a bit that turned later, because every commit after it was
 * acknowledged. The two can be told apart: a commit is only begun when the one before it has been
 * synced, so frames of a later commit beyond a bad frame mean damage. (A bad frame in the very last
 * commit looks like a cut and cannot be told.)
 *
 * Format and checksum: sqlite.org/fileformat2.html, section 4.
 */

/**
 * One line where records that had been saved are lost in the log. Called while the store is locked
 * and nothing has been written: SQLite empties the log later, so a damaged one is kept beside it,
 * and as long as that copy is there the store stays read-only.
 */
export function logDamage(path: string): string | undefined {
  const log = `${path}-wal`;
  const kept = keptName(path);
  const damage = existsSync(log) ? damageOfFile(log) : undefined;
  if (damage !== undefined && !existsSync(kept)) copyFileSync(log, kept);
  return keptDamagedLog(path, damage);
}

/** The same line for a log that was found damaged at an earlier opening. */
export function keptDamagedLog(path: string, damage = 'the log was damaged'): string | undefined {
  const kept = keptName(path);
  if (!existsSync(kept)) return undefined;
  return `${damage}; records are missing, their log is kept in ${kept}`;
}

function keptName(path: string): string {
  return `${path}-wal-damaged`;
}

function damageOfFile(log: string): string | undefined {
  const file = openSync(log, 'r');
  try {
    return damageIn(file, fstatSync(file).size);
  } finally {
    closeSync(file);
  }
}

const HEADER_BYTES = 32;
const FRAME_HEADER_BYTES = 24;
const MAGIC = 0x377f0682;

function damageIn(file: number, size: number): string | undefined {
  if (size <= HEADER_BYTES) return undefined;
  const header = bytesAt(file, 0, HEADER_BYTES);
  const sum = new Checksum((header.readUInt32BE(0) & 1) === 1);
  sum.add(header.subarray(0, 24));
  const magic = (header.readUInt32BE(0) | 1) >>> 0 === (MAGIC | 1) >>> 0;
  if (!magic || !sum.is(header.subarray(24))) return 'the beginning of the log is damaged';

  const frameBytes = FRAME_HEADER_BYTES + header.readUInt32BE(8);
  const frames = Math.floor((size - HEADER_BYTES) / frameBytes);
  const ofThisLog = (frame: Buffer) => frame.subarray(8, 16).equals(header.subarray(16, 24));
  for (let at = 0; at < frames; at += 1) {
    const frame = bytesAt(file, HEADER_BYTES + at * frameBytes, frameBytes);
    sum.add(frame.subarray(0, 8));
    sum.add(frame.subarray(FRAME_HEADER_BYTES));
    if (ofThisLog(frame) && sum.is(frame.subarray(16, 24))) continue;
    const later = Array.from({ length: frames - at }, (_, ahead) =>
      bytesAt(file, HEADER_BYTES + (at + ahead) * frameBytes, FRAME_HEADER_BYTES),
    );
    return goesOnAfterCommit(later, ofThisLog)
      ? `frame ${at + 1} of the log is damaged, and commits follow it`
      : undefined;
  }
  return undefined;
}

/** Whether a frame of this log stands anywhere after the end of a commit, from a bad frame on. */
function goesOnAfterCommit(
  headers: readonly Buffer[],
  ofThisLog: (frame: Buffer) => boolean,
): boolean {
  const isCommit = (frame: Buffer) => frame.readUInt32BE(4) !== 0;
  const end = headers.findIndex((frame) => ofThisLog(frame) && isCommit(frame));
  return end >= 0 && headers.slice(end + 1).some(ofThisLog);
}

function bytesAt(file: number, from: number, length: number): Buffer {
  const bytes = Buffer.alloc(length);
  readSync(file, bytes, 0, length, from);
  return bytes;
}

/** The running checksum of a log: two sums over pairs of 32-bit words. */
class Checksum {
  readonly #bigEndian: boolean;
  #first = 0;
  #second = 0;

  constructor(bigEndian: boolean) {
    this.#bigEndian = bigEndian;
  }

  add(bytes: Buffer): void {
    for (let at = 0; at + 8 <= bytes.length; at += 8) {
      this.#first = (this.#first + this.#word(bytes, at) + this.#second) >>> 0;
      this.#second = (this.#second + this.#word(bytes, at + 4) + this.#first) >>> 0;
    }
  }

  is(bytes: Buffer): boolean {
    return bytes.readUInt32BE(0) === this.#first && bytes.readUInt32BE(4) === this.#second;
  }

  #word(bytes: Buffer, at: number): number {
    return this.#bigEndian ? bytes.readUInt32BE(at) : bytes.readUInt32LE(at);
  }
}
