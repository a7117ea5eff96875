/** Runs what works in steps to its end, without a rest, and gives what it comes to. */
export function finished<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
