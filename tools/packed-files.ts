import { globSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

/**
 * Last part of the app's build: every text file once more, packed (RFC 7932 and RFC 1952), for the
 * server to hand out as it is. A slow line then carries a third of the bytes.
 */
const TEXTS = '**/*.{css,html,js,json,svg,webmanifest}';
/** A packed answer saves nothing where the file fits into the first packet anyway. */
const SMALL_BYTES = 1024;

export function packedFiles(): Plugin {
  return {
    name: 'packed-files',
    apply: 'build',
    writeBundle: {
      sequential: true,
      order: 'post',
      handler({ dir }) {
        if (dir === undefined) throw new Error('the app is built into a folder');
        for (const file of globSync(TEXTS, { cwd: dir })) pack(join(dir, file));
      },
    },
  };
}

function pack(path: string): void {
  const bytes = readFileSync(path);
  if (bytes.length <= SMALL_BYTES) return;
  writeFileSync(`${path}.br`, brotliCompressSync(bytes));
  writeFileSync(`${path}.gz`, gzipSync(bytes));
}
