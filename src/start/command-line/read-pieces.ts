import type { QuickReader } from '../../intake/quick/quick-reader.ts';
import type { QuickRecords } from '../../intake/quick/quick-records.ts';
import type { BookPieces } from './book-pieces.ts';

/**
 * Reads one part of a book: some lines, and then whatever pieces no other part has taken.
 *
 * @param first undefined where there is nothing to read any more
 * @param onRead told after each piece
 * @returns undefined where the part is not surely fine; the other parts then end too
 */
export async function readPieces(
  reader: QuickReader,
  pieces: BookPieces,
  first: Uint8Array | undefined,
  onRead = () => {},
): Promise<QuickRecords | undefined> {
  for (let lines = first; lines !== undefined; lines = pieces.next()) {
    await reader.push(lines);
    if (!reader.isSure) pieces.stop();
    onRead();
  }
  return reader.end();
}
