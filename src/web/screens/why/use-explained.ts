import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Balances } from '../../../ledger/balances.ts';
import { type AmountApart, seenAgainstBook } from '../../../questions/explain/amounts-apart.ts';
import { type Explained, explain } from '../../../questions/explain/explain.ts';
import { observedIn } from '../../../questions/explain/seen.ts';
import { useBook } from '../../book.ts';
import { type Asked, askedAddress } from './asked.ts';

export type Found =
  | { readonly at: 'looking' }
  | {
      readonly at: 'found';
      /** The book at the end of the day that is asked about. */
      readonly before: Balances;
      readonly apart: readonly AmountApart[];
      readonly explained: Explained;
    };

/** Long enough for the page to be drawn before the search takes the thread. */
const AFTER_DRAWING_MS = 30;

/** Explains what was seen, after the page is drawn, and anew whenever a record arrives. */
export function useExplained(asked: Asked): Found {
  const book = useBook();
  const found = useSignal<Found>({ at: 'looking' });
  useEffect(() => {
    found.value = { at: 'looking' };
    const timer = setTimeout(() => {
      const { ledger } = book;
      const observed = observedIn(ledger, asked.seen, asked.day);
      const before = ledger.asOf(asked.day);
      found.value = {
        at: 'found',
        before,
        apart: seenAgainstBook(observed, before),
        explained: explain(ledger, observed, { day: asked.day }),
      };
    }, AFTER_DRAWING_MS);
    return () => clearTimeout(timer);
  }, [askedAddress(asked), book.version.value]);
  return found.value;
}
