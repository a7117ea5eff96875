import { useState } from 'preact/hooks';
import { madeUpOpen } from '../../help/made-up-open.ts';

/**
 * What is typed in a form, kept on this phone until it is saved: a count is long, and a phone falls
 * asleep. `place` says which form of which stall it is. Of the made-up book nothing is kept.
 */
export function useKeptTyping<T extends object>(
  place: string,
  empty: T,
): [typed: T, set: (typed: T) => void, forget: () => void] {
  const key = `cratebook.typed ${place}`;
  const [typed, setTyped] = useState(() => ({ ...empty, ...kept(key) }));
  const set = (next: T) => {
    setTyped(next);
    if (madeUpOpen.value !== undefined) return;
    try {
      localStorage.setItem(key, JSON.stringify(next));
    } catch {
      // No room for what is only half typed: it stays in the form, as anywhere else.
    }
  };
  return [typed, set, () => localStorage.removeItem(key)];
}

function kept(key: string): object {
  try {
    return JSON.parse(localStorage.getItem(key) ?? '{}');
  } catch {
    return {};
  }
}
