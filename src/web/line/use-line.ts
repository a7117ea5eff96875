import type { RefObject } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { refused } from '../../base/outcome.ts';
import type { LineDraft } from '../../intake/one-line/line-kind.ts';
import { type LineRead, readLine } from '../../intake/one-line/read-line.ts';
import type { Book } from '../book.ts';
import type { FieldError } from '../parts/notice.tsx';
import { useSaving } from '../parts/saving.ts';
import { lineContext } from './line-context.ts';

/** A line as it is written, how it is read, and which reading Enter would save. */
export interface WrittenLine {
  readonly text: string;
  readonly field: RefObject<HTMLInputElement | null>;
  readonly read: LineRead;
  /** Place of the chosen reading; -1 while a person has to choose. */
  readonly place: number;
  readonly chosen: LineDraft | undefined;
  readonly errors: readonly FieldError[];
  readonly busy: boolean;
  write(text: string): void;
  /** Goes to the next reading (1) or the one before (-1), round and round. */
  step(by: 1 | -1): void;
  save(draft: LineDraft | undefined): void;
}

export function useLine(book: Book): WrittenLine {
  const field = useRef<HTMLInputElement>(null);
  const [text, setText] = useState('');
  const [at, setAt] = useState(-1);
  const saving = useSaving();
  // The dialog was opened to write here, and this chunk came after it.
  useEffect(() => field.current?.focus(), []);
  const version = book.version.value;
  const read: LineRead = useMemo(
    () => (text.trim() === '' ? refused([]) : readLine(text, lineContext(book))),
    [text, book, version],
  );
  const drafts = read.ok ? read.value : [];
  const place = drafts.length === 1 ? 0 : at;
  const write = (line: string) => {
    setText(line);
    setAt(-1);
    field.current?.focus();
  };
  return {
    text,
    field,
    read,
    place,
    chosen: drafts[place],
    errors: saving.errors,
    busy: saving.busy,
    write,
    step: (by) => {
      // From no choice, down begins with the first and up with the last.
      const from = place < 0 && by < 0 ? 0 : place;
      if (drafts.length > 1) setAt((from + by + drafts.length) % drafts.length);
    },
    save: (draft) => {
      if (draft === undefined || saving.busy) return;
      void saving.save({ ok: true, value: [draft] }, () => write(''));
    },
  };
}
