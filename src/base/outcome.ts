/**
 * The two ways a thing can end that a person can cause: it went well, or it was refused.
 * Bugs are not outcomes: they are assertions (see assert.ts).
 */
export type Outcome<T, R> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: R };

export function done<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

export function refused<R>(refusal: R): { readonly ok: false; readonly refusal: R } {
  return { ok: false, refusal };
}
