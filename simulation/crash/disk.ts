import type { Seeded } from '../../src/base/seeded.ts';
import type { DiskEvent } from './write-trace.ts';

/**
 * A model of a disk behind a cache, after SQLite's own crash tests (sqlite.org/testing.html,
 * section 3.3): what was synced stays; each write since is kept, dropped or torn into sectors of
 * 512 bytes in a power cut; a name that was made or removed since the folder was synced may or may
 * not be there. A byte that nobody wrote does not change (SQLite's "powersafe overwrite").
 */
export class Disk {
  readonly #files = new Map<string, DiskFile>();

  apply(event: DiskEvent): void {
    if (event.kind === 'told') return;
    if (event.kind === 'sync-folder') this.#syncFolder();
    else if (event.kind === 'create') this.#create(event.file);
    else this.#files.set(event.file, after(this.#known(event.file), event));
  }

  /** The files without any cut: what the system shows to a process that reads them. */
  whole(): ReadonlyMap<string, Buffer> {
    const there = [...this.#files].filter(([, file]) => !file.removed);
    return new Map(there.map(([name, file]) => [name, all(file)]));
  }

  /** One of the many states in which a power cut at this moment may leave the files. */
  afterPowerCut(random: Seeded): ReadonlyMap<string, Buffer> {
    const fate = random.pick(['dropped', 'kept', 'mixed', 'mixed', 'mixed'] as const);
    const there = [...this.#files].filter(([, file]) => {
      const certain = file.named && !file.removed;
      return certain || (fate === 'mixed' ? random.chance(50) : (fate === 'kept') !== file.removed);
    });
    return new Map(there.map(([name, file]) => [name, contentAfterCut(file, fate, random)]));
  }

  #create(name: string): void {
    const known = this.#files.get(name);
    if (known !== undefined && !known.removed) return;
    const file = { synced: Buffer.alloc(0), pending: [], named: false, removed: false };
    this.#files.set(name, file);
  }

  #known(name: string): DiskFile {
    const file = this.#files.get(name);
    if (file === undefined) throw new Error(`${name} was never made`);
    return file;
  }

  #syncFolder(): void {
    for (const [name, file] of this.#files) {
      if (file.removed) this.#files.delete(name);
      else this.#files.set(name, { ...file, named: true });
    }
  }
}

type Change = Extract<DiskEvent, { kind: 'write' | 'truncate' }>;
type FileEvent = Change | Extract<DiskEvent, { kind: 'remove' | 'sync' }>;

interface DiskFile {
  readonly synced: Buffer;
  /** Changes since the last sync, in order. */
  readonly pending: readonly Change[];
  /** Whether its name was on the disk at the last sync of the folder. */
  readonly named: boolean;
  readonly removed: boolean;
}

const SECTOR = 512;

function after(file: DiskFile, event: FileEvent): DiskFile {
  if (event.kind === 'remove') return { ...file, removed: true };
  if (event.kind === 'sync') return { ...file, synced: all(file), pending: [] };
  return { ...file, pending: [...file.pending, event] };
}

function all(file: DiskFile): Buffer {
  return file.pending.reduce(changed, file.synced);
}

function contentAfterCut(
  file: DiskFile,
  fate: 'dropped' | 'kept' | 'mixed',
  random: Seeded,
): Buffer {
  if (fate === 'dropped') return file.synced;
  if (fate === 'kept') return all(file);
  let content = file.synced;
  for (const change of file.pending) {
    const what = random.pick(['kept', 'kept', 'dropped', 'torn'] as const);
    if (what === 'kept') content = changed(content, change);
    if (what === 'torn' && change.kind === 'write') content = torn(content, change, random);
  }
  return content;
}

function changed(content: Buffer, change: Change): Buffer {
  if (change.kind === 'truncate') return resized(content, change.length);
  const end = change.offset + change.bytes.length;
  const result = resized(content, Math.max(content.length, end));
  change.bytes.copy(result, change.offset);
  return result;
}

/** Each sector of the file that the write touches gets its new bytes or keeps its old ones. */
function torn(content: Buffer, write: Extract<Change, { kind: 'write' }>, random: Seeded): Buffer {
  const end = write.offset + write.bytes.length;
  let result = content;
  for (let from = write.offset; from < end; ) {
    const to = Math.min(end, (Math.floor(from / SECTOR) + 1) * SECTOR);
    const bytes = write.bytes.subarray(from - write.offset, to - write.offset);
    if (random.chance(50)) result = changed(result, { ...write, offset: from, bytes });
    from = to;
  }
  return result;
}

/** Always a copy: states are made from shared content. What was never written reads as zeros. */
function resized(content: Buffer, length: number): Buffer {
  const result = Buffer.alloc(length);
  content.copy(result, 0, 0, Math.min(length, content.length));
  return result;
}
