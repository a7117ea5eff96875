/**
 * What a candidate change does: whole amounts added to numbered places. Each effect carries two
 * 32-bit fingerprints that are linear: the fingerprint of a sum is the sum of the fingerprints, so
 * the change that is still missing can be looked up instead of searched for.
 */
export interface Effect {
  /** Places, ascending. */
  readonly places: readonly number[];
  /** What is added at each place, never 0; safe integers. */
  readonly amounts: readonly number[];
  /** Fingerprints: sums of place-coefficient × amount, modulo 2^32. */
  readonly one: number;
  readonly two: number;
}

/** @param amounts by place; zeros are left out */
export function effectOf(amounts: ReadonlyMap<number, number>): Effect {
  const entries = [...amounts].filter(([, amount]) => amount !== 0).sort((x, y) => x[0] - y[0]);
  let one = 0;
  let two = 0;
  for (const [place, amount] of entries) {
    one = (one + Math.imul(coefficient(place, 0), amount)) | 0;
    two = (two + Math.imul(coefficient(place, 1), amount)) | 0;
  }
  return { places: entries.map(([place]) => place), amounts: entries.map((e) => e[1]), one, two };
}

/** The sum of effects, each taken `times` times. */
export function sumOfEffects(parts: Iterable<readonly [effect: Effect, times: number]>): Effect {
  const amounts = new Map<number, number>();
  for (const [effect, times] of parts) addTo(amounts, effect, times);
  return effectOf(amounts);
}

/** Adds an effect, taken `times` times, to amounts by place. */
export function addTo(amounts: Map<number, number>, effect: Effect, times: number): void {
  for (let at = 0; at < effect.places.length; at += 1) {
    const place = effect.places[at] ?? 0;
    amounts.set(place, (amounts.get(place) ?? 0) + times * (effect.amounts[at] ?? 0));
  }
}

/** True where both effects, each taken so many times, are exactly the same. */
export function isSameEffect(a: Effect, aTimes: number, b: Effect, bTimes: number): boolean {
  if (a === b && aTimes === bTimes) return true;
  if (a.places.length !== b.places.length) return false;
  for (let at = 0; at < a.places.length; at += 1) {
    if (a.places[at] !== b.places[at]) return false;
    if ((a.amounts[at] ?? 0) * aTimes !== (b.amounts[at] ?? 0) * bTimes) return false;
  }
  return true;
}

/** How many times one effect makes another exactly; 0 where no whole number of times does. */
export function timesBetween(effect: Effect, whole: Effect): number {
  if (effect.places.length === 0 || effect.places.length !== whole.places.length) return 0;
  const times = (whole.amounts[0] ?? 0) / (effect.amounts[0] ?? 1);
  return Number.isSafeInteger(times) && isSameEffect(effect, times, whole, 1) ? times : 0;
}

/** An odd 32-bit number for each place, well mixed (murmur3's finaliser, public domain). */
function coefficient(place: number, which: 0 | 1): number {
  let mixed = Math.imul(place * 2 + which + 1, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) | 1;
}
