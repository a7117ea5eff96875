import { useEffect, useState } from 'preact/hooks';

/** Lines drawn at one stretch: on a slow phone a few milliseconds each. */
const AT_ONCE = 6;

/**
 * How many lines of a long list are drawn: a few at first, then a few more at a time until all that
 * are wanted are there, so that the screen answers in between. It begins anew with another list.
 */
export function useGrowing(wanted: number, list: unknown): number {
  const [grown, setGrown] = useState({ list, lines: AT_ONCE });
  const lines = grown.list === list ? grown.lines : AT_ONCE;
  useEffect(() => {
    if (lines >= wanted) return;
    const timer = setTimeout(() => setGrown({ list, lines: lines + AT_ONCE }));
    return () => clearTimeout(timer);
  }, [list, lines, wanted]);
  return Math.min(lines, wanted);
}
