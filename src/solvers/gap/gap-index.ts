import { addTo, type Effect, isSameEffect } from './effect.ts';

/**
 * Finds which one, two or three of many candidate changes add up exactly to a difference.
 *
 * Candidates with the same effect are kept together as one class. A class is found by its
 * fingerprint in a hash table, and always compared in full before it is given out. For two, one
 * member must touch a place where the difference is not 0; only the classes at the place with the
 * fewest are tried, and the other member is looked up. Three likewise, one step deeper. This finds
 * every answer: whatever adds up to a difference must touch each place of it.
 */
export class GapIndex<T> {
  readonly #effects: Effect[] = [];
  readonly #times: number[] = [];
  readonly #items: T[][] = [];
  readonly #byPlace = new Map<number, number[]>();
  #ones = new Int32Array(FIRST);
  #twos = new Int32Array(FIRST);
  /** Class + 1 by slot; 0 is empty. The length is a power of two, at most half full. */
  #slots = new Int32Array(FIRST * 2);

  /** How many different effects there are. */
  get size(): number {
    return this.#effects.length;
  }

  /**
   * Adds a candidate whose effect is `effect` taken `times` times; without effect it is not kept.
   */
  add(effect: Effect, times: number, item: T): void {
    if (effect.places.length === 0 || times === 0) return;
    const one = Math.imul(effect.one, times);
    const two = Math.imul(effect.two, times);
    const known = this.#find(one, two, effect, times);
    if (known >= 0) this.#items[known]?.push(item);
    else this.#addClass(effect, times, one, two, item);
  }

  itemsOf(index: number): readonly T[] {
    return this.#items[index] ?? [];
  }

  effectOf(index: number): { readonly effect: Effect; readonly times: number } {
    return { effect: this.#effects[index] ?? NO_EFFECT, times: this.#times[index] ?? 0 };
  }

  /** The class whose effect is the difference; undefined where there is none. */
  single(difference: Effect): number | undefined {
    const found = this.#find(difference.one, difference.two, difference, 1);
    return found < 0 ? undefined : found;
  }

  /** Every pair of classes that adds up to the difference, each pair once. */
  pairs(difference: Effect): [number, number][] {
    const found: [number, number][] = [];
    const seen = new Set<number>();
    for (const first of this.#fewestAt(difference.places)) {
      const one = (difference.one - (this.#ones[first] ?? 0)) | 0;
      const two = (difference.two - (this.#twos[first] ?? 0)) | 0;
      this.#eachAt(one, two, (second) => {
        const [low, high] = first < second ? [first, second] : [second, first];
        const key = low * this.size + high;
        if (seen.has(key) || !this.#addUp([first, second], difference)) return;
        seen.add(key);
        found.push([low, high]);
      });
    }
    return found;
  }

  /**
   * Every triple of classes that adds up to the difference, each once, until `most` were found.
   * Triples in which two members alone make no difference are left out.
   */
  triples(difference: Effect, most: number): [number, number, number][] {
    const found: [number, number, number][] = [];
    const seen = new Set<string>();
    for (const first of this.#fewestAt(difference.places)) {
      const rest = this.#less(difference, first);
      const restOne = (difference.one - (this.#ones[first] ?? 0)) | 0;
      const restTwo = (difference.two - (this.#twos[first] ?? 0)) | 0;
      for (const second of this.#fewestAt(rest)) {
        const one = (restOne - (this.#ones[second] ?? 0)) | 0;
        const two = (restTwo - (this.#twos[second] ?? 0)) | 0;
        if ((one | two) === 0) continue;
        let slot = slotOf(one, two) & (this.#slots.length - 1);
        for (let held = this.#slots[slot] ?? 0; held !== 0; held = this.#slots[slot] ?? 0) {
          const third = held - 1;
          if (this.#ones[third] === one && this.#twos[third] === two) {
            const triple = inOrder(first, second, third);
            const key = triple.join(' ');
            if (!seen.has(key) && this.#addUp(triple, difference)) {
              seen.add(key);
              found.push(triple);
              if (found.length >= most) return found;
            }
          }
          slot = (slot + 1) & (this.#slots.length - 1);
        }
      }
    }
    return found;
  }

  /** The classes that touch whichever of the places fewest touch. */
  #fewestAt(places: readonly number[]): readonly number[] {
    let fewest: readonly number[] | undefined;
    for (const place of places) {
      const touching = this.#byPlace.get(place) ?? NONE;
      if (fewest === undefined || touching.length < fewest.length) fewest = touching;
    }
    return fewest ?? NONE;
  }

  /** Places where something is left after taking a class off the difference. */
  #less(difference: Effect, index: number): number[] {
    const left = new Map<number, number>();
    addTo(left, difference, 1);
    const { effect, times } = this.effectOf(index);
    addTo(left, effect, -times);
    return [...left].filter(([, amount]) => amount !== 0).map(([place]) => place);
  }

  #addUp(classes: readonly number[], difference: Effect): boolean {
    const left = new Map<number, number>();
    addTo(left, difference, 1);
    for (const index of classes) {
      const { effect, times } = this.effectOf(index);
      addTo(left, effect, -times);
    }
    for (const amount of left.values()) if (amount !== 0) return false;
    return true;
  }

  #find(one: number, two: number, effect: Effect, times: number): number {
    const mask = this.#slots.length - 1;
    let slot = slotOf(one, two) & mask;
    for (let held = this.#slots[slot] ?? 0; held !== 0; held = this.#slots[slot] ?? 0) {
      const index = held - 1;
      if (this.#ones[index] === one && this.#twos[index] === two) {
        const known = this.#effects[index] ?? NO_EFFECT;
        if (isSameEffect(known, this.#times[index] ?? 0, effect, times)) return index;
      }
      slot = (slot + 1) & mask;
    }
    return -1;
  }

  /** Every class with these fingerprints. */
  #eachAt(one: number, two: number, on: (index: number) => void): void {
    const mask = this.#slots.length - 1;
    let slot = slotOf(one, two) & mask;
    for (let held = this.#slots[slot] ?? 0; held !== 0; held = this.#slots[slot] ?? 0) {
      const index = held - 1;
      if (this.#ones[index] === one && this.#twos[index] === two) on(index);
      slot = (slot + 1) & mask;
    }
  }

  #addClass(effect: Effect, times: number, one: number, two: number, item: T): void {
    const index = this.#effects.length;
    if (index === this.#ones.length) this.#grow();
    this.#effects.push(effect);
    this.#times.push(times);
    this.#items.push([item]);
    this.#ones[index] = one;
    this.#twos[index] = two;
    for (const place of effect.places) {
      const touching = this.#byPlace.get(place);
      if (touching === undefined) this.#byPlace.set(place, [index]);
      else touching.push(index);
    }
    this.#put(index);
  }

  #put(index: number): void {
    const mask = this.#slots.length - 1;
    let slot = slotOf(this.#ones[index] ?? 0, this.#twos[index] ?? 0) & mask;
    while (this.#slots[slot] !== 0) slot = (slot + 1) & mask;
    this.#slots[slot] = index + 1;
  }

  #grow(): void {
    const [ones, twos] = [this.#ones, this.#twos];
    this.#ones = new Int32Array(ones.length * 2);
    this.#twos = new Int32Array(twos.length * 2);
    this.#ones.set(ones);
    this.#twos.set(twos);
    this.#slots = new Int32Array(this.#ones.length * 2);
    for (let index = 0; index < this.#effects.length; index += 1) this.#put(index);
  }
}

const FIRST = 1024;
const NONE: readonly number[] = [];
const NO_EFFECT: Effect = { places: [], amounts: [], one: 0, two: 0 };

/** Fingerprints of multiples share their low bits, so both are mixed once more for the slot. */
function slotOf(one: number, two: number): number {
  const mixed = Math.imul(one ^ (two >>> 15) ^ (two << 11), 0x9e3779b1);
  return mixed ^ (mixed >>> 15);
}

function inOrder(a: number, b: number, c: number): [number, number, number] {
  const [low = 0, middle = 0, high = 0] = [a, b, c].sort((x, y) => x - y);
  return [low, middle, high];
}
