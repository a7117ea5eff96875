import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { SeenExplained } from '../../../questions/explain/explain-seen.ts';
import { useBook } from '../../book.ts';
import { type Asked, askedAddress } from './asked.ts';
import { CauseSearch } from './cause-search.ts';

export type Found =
  | { readonly at: 'looking'; readonly isLong: boolean }
  | { readonly at: 'failed' }
  | ({ readonly at: 'found' } & SeenExplained);

/** After so long the page says that it is still looking. */
const LONG_MS = 2000;

/** Explains what was seen, beside the page, and anew whenever a record arrives. */
export function useExplained(asked: Asked): Found {
  const book = useBook();
  const found = useSignal<Found>({ at: 'looking', isLong: false });
  const search = useMemo(() => new CauseSearch(), []);
  useEffect(() => () => search.end(), [search]);
  const version = book.version.value;
  useEffect(() => {
    found.value = { at: 'looking', isLong: false };
    const timer = setTimeout(() => {
      found.value = { at: 'looking', isLong: true };
    }, LONG_MS);
    const done = (to: Found): void => {
      clearTimeout(timer);
      found.value = to;
    };
    search.ask(
      { ledger: book.ledger, version, seen: asked.seen, day: asked.day },
      (explained) => done({ at: 'found', ...explained }),
      () => done({ at: 'failed' }),
    );
    return () => clearTimeout(timer);
  }, [askedAddress(asked), version]);
  return found.value;
}
