import type { Say } from '../words/say.ts';

/** Facts beside each other in one line, with the comma of the language; empty ones are left out. */
export function joined(facts: readonly (string | undefined)[], say: Say): string {
  return facts.filter((fact) => fact !== undefined && fact !== '').join(say`, `);
}
