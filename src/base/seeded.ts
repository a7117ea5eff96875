/**
 * Repeatable randomness for tests, the simulator and the demo: the same seed gives the same season.
 * The generator is mulberry32 (Tommy Ettinger, public domain; from memory), good enough to make
 * variety and never used for secrets or ids that must not be guessed.
 */
export interface Seeded {
  /** A number from 0 up to, not including, 1. */
  fraction(): number;
  /** A whole number from `least` to `most`, both included. */
  whole(least: number, most: number): number;
  /** True in `percent` of 100 calls, on average. */
  chance(percent: number): boolean;
  pick<T>(items: readonly T[]): T;
  shuffle<T>(items: readonly T[]): T[];
  bytes(count: number): Uint8Array;
}

export function seeded(seed: number): Seeded {
  let state = seed >>> 0;
  const fraction = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const whole = (least: number, most: number): number =>
    least + Math.floor(fraction() * (most - least + 1));
  const shuffle = <T>(items: readonly T[]): T[] => {
    const mixed = [...items];
    for (let last = mixed.length - 1; last > 0; last -= 1) {
      const other = whole(0, last);
      const kept = mixed[last] as T;
      mixed[last] = mixed[other] as T;
      mixed[other] = kept;
    }
    return mixed;
  };
  return {
    fraction,
    whole,
    shuffle,
    chance: (percent) => fraction() * 100 < percent,
    pick: <T>(items: readonly T[]): T => items[whole(0, items.length - 1)] as T,
    bytes: (count) => Uint8Array.from({ length: count }, () => whole(0, 255)),
  };
}
