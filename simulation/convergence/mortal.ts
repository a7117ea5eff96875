import type { BookCopy } from '../../src/journal/book-copy.ts';

/** When a phone dies: after so many changes of its store, counted from the last start of a step. */
export interface Life {
  killAfter: number;
  calls: number;
  /** Called when it has died. */
  killed: () => void;
}

/**
 * A copy whose phone may be killed: the call that it falls into still happens, its answer and every
 * later call never come.
 */
export function mortal(copy: BookCopy, life: Life): BookCopy {
  const through = async <T>(work: () => Promise<T>): Promise<T> => {
    life.calls += 1;
    const dies = life.calls >= life.killAfter;
    if (!dies) return work();
    if (life.calls === life.killAfter) await work();
    life.killed();
    return new Promise<never>(() => undefined);
  };
  return {
    journal: copy.journal,
    state: () => copy.state(),
    keep: (records) => through(() => copy.keep(records)),
    take: (records, place) => through(() => copy.take(records, place)),
    sent: (number) => through(() => copy.sent(number)),
    hold: (number, held) => through(() => copy.hold(number, held)),
    putBack: (ids, held) => through(() => copy.putBack(ids, held)),
  };
}
