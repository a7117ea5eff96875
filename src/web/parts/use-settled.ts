import { useEffect, useState } from 'preact/hooks';

/**
 * A value once it has stayed the same for a moment: heavy sums then follow the typing and never
 * hold a key up. At first it is undefined.
 *
 * @param key says the value as text: the same text is the same value
 */
export function useSettled<T>(value: T, key: string, ms: number): T | undefined {
  const [settled, setSettled] = useState<{ readonly value: T } | undefined>(undefined);
  useEffect(() => {
    const timer = setTimeout(() => setSettled({ value }), ms);
    return () => clearTimeout(timer);
  }, [key, ms]);
  return settled?.value;
}
