import type { Highs } from 'highs';
import * as highs from 'highs';

/**
 * The integer-programming solver HiGHS (npm highs 1.15.3, MIT), an oracle for tests and bench. The
 * package's types are those of its CommonJS form, so its loader is found by name.
 */
export async function loadHighs(): Promise<Pick<Highs, 'solve'>> {
  const load: unknown = Reflect.get(highs, 'default');
  if (!isLoader(load)) throw new Error('highs has no loader');
  return load();
}

function isLoader(value: unknown): value is () => Promise<Highs> {
  return typeof value === 'function';
}
