import { useEffect, useState } from 'preact/hooks';
import type { LineRead } from '../../intake/one-line/read-line.ts';
import { useBook } from '../book.ts';
import { spokenWords } from './line-words.ts';

/** Long enough that a word is finished, so that not every letter is read out. */
const PAUSE_MS = 600;

/** How the line is read, for a screen reader: said once the writing pauses. */
export function useSpoken(read: LineRead): string {
  const { ledger } = useBook();
  const [spoken, setSpoken] = useState('');
  const words = read.ok
    ? spokenWords(read.value, [], ledger)
    : spokenWords([], read.refusal, ledger);
  useEffect(() => {
    const timer = setTimeout(() => setSpoken(words), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [words]);
  return spoken;
}
