import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Fault } from './appender.ts';

/**
 * What a process asked of the disk, in order, as `strace` saw it: the writes with all their bytes,
 * the syncs, and between them the moments at which a record was acknowledged.
 */
export type DiskEvent =
  | { readonly kind: 'create'; readonly file: string }
  | { readonly kind: 'remove'; readonly file: string }
  | { readonly kind: 'sync'; readonly file: string }
  | { readonly kind: 'sync-folder' }
  | {
      readonly kind: 'write';
      readonly file: string;
      readonly offset: number;
      readonly bytes: Buffer;
    }
  | { readonly kind: 'truncate'; readonly file: string; readonly length: number }
  | { readonly kind: 'told'; readonly number: number };

export interface WriteTrace {
  readonly events: readonly DiskEvent[];
  /** The store's files as the process left them, to hold the trace against. */
  readonly left: ReadonlyMap<string, Buffer>;
}

/** Every call by which a file's content, length or name can change, and every sync. */
const CALLS = [
  ...['openat', 'write', 'writev', 'pwrite64', 'pwritev', 'pwritev2', 'copy_file_range'],
  ...['ftruncate', 'fallocate', 'unlink', 'unlinkat', 'rename', 'renameat', 'renameat2'],
  ...['fsync', 'fdatasync', 'sync_file_range'],
];

/** Runs an appender under `strace` on a store in an empty folder. */
export function traceAppender(
  folder: string,
  seed: number,
  fault: Fault,
  most: number,
): WriteTrace {
  const script = fileURLToPath(new URL('appender.ts', import.meta.url));
  const trace = join(tmpdir(), `${basename(folder)}.trace`);
  const watch = ['-y', '-xx', '-s', '100000000', '-e', 'signal=none', '-o', trace];
  const run = [process.execPath, script, join(folder, 'store.sqlite'), String(seed), fault];
  // Only the main thread is followed: the engine and the acknowledging both run in it.
  const ended = spawnSync(
    'strace',
    [...watch, '-e', `trace=${CALLS.join(',')}`, ...run, String(most)],
    { stdio: ['ignore', 'ignore', 'pipe'], encoding: 'utf8' },
  );
  if (ended.error !== undefined) throw new Error(`strace is needed: ${ended.error.message}`);
  if (ended.status !== 0) throw new Error(`the appender failed: ${ended.stderr}`);
  const events = diskEvents(readFileSync(trace, 'latin1'), folder);
  rmSync(trace);
  const names = readdirSync(folder).filter((name) => !isOfTheMoment(name));
  return { events, left: new Map(names.map((name) => [name, readFileSync(join(folder, name))])) };
}

const CALL = /^(\w+)\((.*)\)\s+= (\d+)(?:<[^>]*>)?$/;
const TEXT = /"((?:\\x[0-9a-f]{2})*)"/;

/** Exported for its test. */
export function diskEvents(trace: string, folder: string): readonly DiskEvent[] {
  const events: DiskEvent[] = [];
  for (const line of trace.split('\n')) {
    // Calls that failed answer -1 and changed nothing.
    const [, call = '', rest = '', answer = ''] = CALL.exec(line) ?? [];
    const event = eventOf(call, rest, Number(answer), folder);
    if (event !== undefined) events.push(...event);
  }
  return events;
}

function eventOf(call: string, rest: string, answer: number, folder: string) {
  if (call === 'write' && rest.startsWith('1<')) return toldOf(textIn(rest));
  const path = call === 'openat' || call.startsWith('unlink') ? pathIn(rest) : handleIn(rest);
  if (path === folder && call === 'fsync') return [{ kind: 'sync-folder' } as const];
  if (dirname(path) !== folder || isOfTheMoment(path)) return undefined;
  return fileEvent(call, rest, answer, basename(path));
}

/** The lock and the index of the log mean nothing once the process is gone, and are made anew. */
function isOfTheMoment(name: string): boolean {
  return name.endsWith('-lock') || name.endsWith('-shm');
}

function fileEvent(
  call: string,
  rest: string,
  answer: number,
  file: string,
): readonly DiskEvent[] | undefined {
  const numbers = rest.split(', ').map(Number);
  switch (call) {
    case 'openat':
      return rest.includes('O_CREAT') ? [{ kind: 'create', file }] : undefined;
    case 'pwrite64': {
      // A short write is only what it answers.
      const bytes = textIn(rest).subarray(0, answer);
      return [{ kind: 'write', file, offset: numbers.at(-1) ?? Number.NaN, bytes }];
    }
    case 'ftruncate':
      return [{ kind: 'truncate', file, length: numbers.at(-1) ?? Number.NaN }];
    case 'fsync':
    case 'fdatasync':
      return [{ kind: 'sync', file }];
    case 'unlink':
    case 'unlinkat':
      return [{ kind: 'remove', file }];
    default:
      throw new Error(`${call} on ${file}: the model of the disk does not know this call`);
  }
}

function toldOf(bytes: Buffer): readonly DiskEvent[] {
  const numbers = bytes.toString('latin1').trimEnd().split('\n').map(Number);
  return numbers.map((number) => ({ kind: 'told', number }));
}

/** The bytes of the first quoted text; every one is written as `\xNN`. */
function textIn(rest: string): Buffer {
  return Buffer.from((TEXT.exec(rest)?.[1] ?? '').replaceAll('\\x', ''), 'hex');
}

function pathIn(rest: string): string {
  return textIn(rest).toString('utf8');
}

/** The path of the file handle that the call was made on, as `22<\x2f\x74…>`. */
function handleIn(rest: string): string {
  const hex = /^\d+<((?:\\x[0-9a-f]{2})*)>/.exec(rest)?.[1] ?? '';
  return Buffer.from(hex.replaceAll('\\x', ''), 'hex').toString('utf8');
}
