import { useEffect } from 'preact/hooks';

/** Keeps the screen lit while counting, where the browser can; a dark phone only costs a tap. */
export function useAwake(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    let gone = false;
    const ask = async () => {
      try {
        lock = await navigator.wakeLock?.request('screen');
        if (gone) await lock?.release();
      } catch {
        // Refused on low battery or in a hidden tab: nothing to do about it.
      }
    };
    void ask();
    return () => {
      gone = true;
      void lock?.release();
    };
  }, []);
}
