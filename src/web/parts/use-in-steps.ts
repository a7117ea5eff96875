import { useEffect, useState } from 'preact/hooks';

/** Work at one stretch: a tap that comes meanwhile is answered well within a tenth of a second. */
const STRETCH_MS = 10;

/**
 * What long work comes to, done in steps so that the screen answers in between. Until it is done
 * the last outcome stands; at first there is none. Other work begins anew where the key changes.
 *
 * @param key says what the work is about, as text
 */
export function useInSteps<T>(work: () => Generator<unknown, T>, key: string): T | undefined {
  const [outcome, setOutcome] = useState<{ readonly value: T } | undefined>(undefined);
  useEffect(() => {
    const steps = work();
    let timer = setTimeout(stretch);
    function stretch(): void {
      const end = performance.now() + STRETCH_MS;
      do {
        const step = steps.next();
        if (step.done) {
          setOutcome({ value: step.value });
          return;
        }
      } while (performance.now() < end);
      timer = setTimeout(stretch);
    }
    return () => clearTimeout(timer);
  }, [key]);
  return outcome?.value;
}
