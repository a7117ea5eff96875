import {
  closeSync,
  existsSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { messageOf } from '../message-of.ts';
import { Stop } from './stop.ts';

/**
 * Writes a file whole or not at all: pieces go to a file beside it, which then takes its place.
 * @param book the file that was read, which must not be written over
 */
export function writeFile(
  path: string,
  pieces: Iterable<string | Uint8Array>,
  book?: string,
): void {
  if (book !== undefined && isSameFile(path, book)) {
    throw new Stop(`${path}: is the book itself; choose another name for the file`);
  }
  const part = `${path}.part`;
  try {
    const file = openSync(part, 'w');
    try {
      for (const piece of pieces) {
        const bytes = typeof piece === 'string' ? Buffer.from(piece) : piece;
        for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
      }
    } finally {
      closeSync(file);
    }
    renameSync(part, path);
  } catch (error) {
    rmSync(part, { force: true });
    if (error instanceof Stop) throw error;
    throw new Stop(`${path}: cannot be written: ${messageOf(error)}`);
  }
}

function isSameFile(a: string, b: string): boolean {
  return existsSync(a) && existsSync(b) && realpathSync(a) === realpathSync(b);
}
