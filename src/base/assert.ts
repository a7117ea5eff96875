/** Thrown only when the program itself is wrong; never for something a person typed. */
export class BrokenAssumption extends Error {
  override name = 'BrokenAssumption';
}

/** Stops the program when something that must hold does not. */
export function assert(condition: unknown, assumption: string): asserts condition {
  if (!condition) throw new BrokenAssumption(assumption);
}

/** Marks the arm of a switch that the compiler proves cannot be reached. */
export function unreachable(value: never): never {
  throw new BrokenAssumption(`no arm for ${JSON.stringify(value)}`);
}
