import { signal } from '@preact/signals';
import type { Book } from '../book.ts';
import { go } from '../navigation.ts';

/** The made-up book while it is open in place of the real one, and the page left for it. */
export interface MadeUpOpen {
  readonly book: Book;
  readonly leftAt: string;
}

export const madeUpOpen = signal<MadeUpOpen | undefined>(undefined);

/** Puts the made-up book away, with all that was tried in it, and goes back to where one was. */
export function putAway(): void {
  const leftAt = madeUpOpen.value?.leftAt;
  madeUpOpen.value = undefined;
  if (leftAt !== undefined) go(leftAt);
}
