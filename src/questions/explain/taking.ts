import { type Effect, isSameEffect, timesBetween } from '../../solvers/gap/effect.ts';
import type { GapIndex } from '../../solvers/gap/gap-index.ts';
import type { Hypothesis, Taking } from './hypothesis.ts';

/** Keeps the hypotheses that account for the whole difference by themselves. */
export class TakingWhole implements Taking {
  readonly isWhole = true;
  readonly found: Hypothesis[] = [];
  readonly #difference: Effect;
  readonly #times = new Map<Effect, number>();

  constructor(difference: Effect) {
    this.#difference = difference;
  }

  timesOf(effect: Effect): number {
    const known = this.#times.get(effect);
    if (known !== undefined) return known;
    const times = timesBetween(effect, this.#difference);
    this.#times.set(effect, times);
    return times;
  }

  fits(effect: Effect, times: number): boolean {
    return isSameEffect(effect, times, this.#difference, 1);
  }

  take(effect: Effect, times: number, hypothesis: Hypothesis): void {
    if (this.fits(effect, times)) this.found.push(hypothesis);
  }
}

/**
 * Keeps the hypotheses that may account for a part of the difference, by their effects. One that
 * touches no balance that differs is left out: another would have to undo all of it.
 */
export class TakingParts implements Taking {
  readonly isWhole = false;
  readonly #index: GapIndex<Hypothesis>;
  readonly #isOff: (place: number) => boolean;
  readonly #touching = new Map<Effect, boolean>();

  constructor(index: GapIndex<Hypothesis>, isOff: (place: number) => boolean) {
    this.#index = index;
    this.#isOff = isOff;
  }

  timesOf(effect: Effect): number | undefined {
    const known = this.#touching.get(effect) ?? effect.places.some(this.#isOff);
    this.#touching.set(effect, known);
    return known ? undefined : 0;
  }

  fits(effect: Effect): boolean {
    return effect.places.some(this.#isOff);
  }

  take(effect: Effect, times: number, hypothesis: Hypothesis): void {
    if (effect.places.some(this.#isOff)) this.#index.add(effect, times, hypothesis);
  }
}
