import { useEffect, useMemo, useState } from 'preact/hooks';
import { sheetEntries } from '../../../questions/stall/sheet-entries.ts';
import { type StallSheet, stallSheet } from '../../../questions/stall/stall-sheet.ts';
import type { RecordOf } from '../../../records/record.ts';
import type { StallEntry } from '../../../records/stall-entry.ts';
import { STALL_STORE, type StallLog, stallLog } from '../../../storage/indexeddb/stall-log.ts';
import { type Book, useBook } from '../../book.ts';
import { forgetfulLog } from '../../help/forgetful-log.ts';
import { madeUpOpen } from '../../help/made-up-open.ts';
import { say } from '../../say.ts';

/** Lines in one record: a busy day of one phone stays far below what a request may carry. */
const LINES_MAX = 1000;

export type EntryParts = Omit<StallEntry, 'id' | 'at' | 'what'>;

/** Lines that are handed in by themselves: an hour of a busy stall. */
const MUCH = 50;

/** The sheet of a stall on this phone: what all its phones wrote, and the way to write a line. */
export interface OpenSheet {
  /** False until what this phone keeps has been read: a moment. */
  readonly isRead: boolean;
  readonly sheet: StallSheet;
  /** Lines that only this phone has. */
  readonly onlyHere: readonly StallEntry[];
  /** Lines that this phone could not keep, or has not kept yet. */
  readonly notKept: number;
  readonly isFull: boolean;
  /**
   * Keeps a line on this phone. Where there is no room, a sale counts while the page is open; a
   * count stays in its form.
   */
  write(what: StallEntry['what'], parts?: EntryParts): Promise<Written>;
  /** Puts lines that only this phone has into the book, from where the others get them. */
  handIn(more?: readonly StallEntry[]): Promise<string | undefined>;
}

interface Written {
  readonly entry: StallEntry;
  readonly isKept: boolean;
}

const TAPS: ReadonlySet<StallEntry['what']> = new Set(['sold', 'paid', 'undo']);

export function useSheet(stall: RecordOf<'stall'>): OpenSheet {
  const book = useBook();
  const { ledger, address } = book;
  const log = useMemo(() => {
    const isMadeUp = madeUpOpen.value !== undefined;
    return isMadeUp ? forgetfulLog() : stallLog(STALL_STORE, address, stall.stall);
  }, [address, stall.stall]);
  const { here, write, ...kept } = useKeptLines(log, book.signs);
  const version = book.version.value;
  // The whole book is looked through only where it or this phone's lines have changed.
  const { entries, onlyHere } = useMemo(
    () => sheetEntries(ledger, stall.stall, here ?? []),
    [ledger, version, stall.stall, here],
  );
  const sheet = useMemo(() => stallSheet(entries), [entries]);
  const handIn = (more: readonly StallEntry[] = []) =>
    handedIn(book, stall, [...(here ?? []), ...more]);
  // A phone may be lost: so many lines are worth a record. It waits for a server by itself.
  const isMuch = onlyHere.length >= MUCH;
  useEffect(() => {
    if (isMuch) void handIn();
  }, [isMuch]);
  return { isRead: here !== undefined, sheet, onlyHere, ...kept, write, handIn };
}

/** Puts the lines that are in no record yet into one; why not, where the book refuses it. */
async function handedIn(
  book: Book,
  { stall, starts }: RecordOf<'stall'>,
  here: readonly StallEntry[],
): Promise<string | undefined> {
  const { onlyHere } = sheetEntries(book.ledger, stall, here);
  for (let from = 0; from < onlyHere.length; from += LINES_MAX) {
    const sheet = { stall, entries: onlyHere.slice(from, from + LINES_MAX) };
    const date = starts.slice(0, 10);
    // The sheet has its own Undo, line by line; the notice's would take all of them back.
    const answer = await book.append([{ kind: 'count', date, lines: {}, sheet }], true);
    if (!answer.ok) return say.told(answer.refusal.message);
  }
  return undefined;
}

/** The lines of this phone's own store: undefined until they have been read. */
function useKeptLines(log: StallLog, signs: string) {
  const [here, setHere] = useState<readonly StallEntry[] | undefined>(undefined);
  const [kept, setKept] = useState({ notKept: 0, isFull: false });
  useEffect(() => {
    const read = () =>
      void log.read().then((lines) => {
        const known = new Set(lines.map(({ id }) => id));
        setHere((now = []) => [...lines, ...now.filter(({ id }) => !known.has(id))]);
      });
    read();
    // Another window of this phone may have written meanwhile.
    const again = () => document.visibilityState === 'visible' && read();
    document.addEventListener('visibilitychange', again);
    return () => document.removeEventListener('visibilitychange', again);
  }, [log]);
  const write: OpenSheet['write'] = async (what, parts = {}) => {
    const entry = { id: newId(signs), at: localNow(), what, ...parts };
    setKept((was) => ({ ...was, notKept: was.notKept + 1 }));
    const isKept = await log.write(entry);
    if (isKept || TAPS.has(what)) setHere((now = []) => [...now, entry]);
    setKept((was) => (isKept ? { ...was, notKept: was.notKept - 1 } : { ...was, isFull: true }));
    return { entry, isKept };
  };
  return { here, write, ...kept };
}

let lastMs = 0;

/** Unique also where two phones were given the same three signs. */
function newId(signs: string): string {
  lastMs = Math.max(Date.now(), lastMs + 1);
  const random = crypto.getRandomValues(new Uint32Array(1))[0] ?? 0;
  return `${signs}-${lastMs.toString(36)}${random.toString(36)}`;
}

/** The phone's own clock: `YYYY-MM-DDTHH:MM:SS`. */
export function localNow(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 19);
}
