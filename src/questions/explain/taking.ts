import type { MovementRecord } from '../../records/record.ts';
import { type Effect, isSameEffect, timesBetween } from '../../solvers/gap/effect.ts';
import type { GapIndex } from '../../solvers/gap/gap-index.ts';
import type { Hypothesis, Taking } from './hypothesis.ts';
import type { Situation } from './situation.ts';

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
 * Keeps the hypotheses that may account for a part of the difference, by their effects: each
 * touches a balance that differs, and of goods it touches only products that differ somewhere. What
 * is left out could only be one of two mistakes that undo each other wholly.
 */
export class TakingParts implements Taking {
  readonly isWhole = false;
  readonly #index: GapIndex<Hypothesis>;
  readonly #situation: Situation;
  readonly #fitting = new Map<Effect, boolean>();

  constructor(index: GapIndex<Hypothesis>, situation: Situation) {
    this.#index = index;
    this.#situation = situation;
  }

  timesOf(effect: Effect): number | undefined {
    const known = this.#fitting.get(effect) ?? this.fits(effect);
    this.#fitting.set(effect, known);
    return known ? undefined : 0;
  }

  fits({ places }: Effect): boolean {
    const situation = this.#situation;
    let isOff = false;
    for (const place of places) {
      if (situation.offAt(place) !== 0) isOff = true;
      else if (!situation.isDoubtful(place)) return false;
    }
    return isOff;
  }

  take(effect: Effect, times: number, hypothesis: Hypothesis): void {
    if (this.fits(effect)) this.#index.add(effect, times, hypothesis);
  }
}

/**
 * Lets through what explains the difference of certain stalls: only their own settlings can move
 * what is short and over there; what moves other balances is let be.
 */
export class TakingOfStalls implements Taking {
  readonly isWhole: boolean;
  readonly #into: Taking;
  readonly #stalls: readonly string[];
  readonly #place: number | undefined;

  constructor(into: Taking, situation: Situation, stalls: readonly string[]) {
    this.isWhole = into.isWhole;
    this.#into = into;
    this.#stalls = stalls;
    this.#place = situation.effects.places.numberOf('money', 'overshort', '');
  }

  timesOf(effect: Effect): number | undefined {
    return this.#into.timesOf(effect);
  }

  fits(effect: Effect, times: number): boolean {
    return this.#into.fits(effect, times);
  }

  take(effect: Effect, times: number, hypothesis: Hypothesis): void {
    const { record, adds } = hypothesis;
    const about = adds ?? record;
    // Without its settling a stall differs by nothing, which explains nothing.
    const isOwn =
      about?.kind === 'stall-close' &&
      this.#stalls.includes(about.stall) &&
      hypothesis.sort !== 'not-ours';
    if (!isOwn && this.#place !== undefined && effect.places.includes(this.#place)) return;
    this.#into.take(effect, times, hypothesis);
  }
}

/** True where a record, as it stands, cannot be what is wrong, or a part of it. */
export function isPassedOver(
  situation: Situation,
  taking: Taking,
  record: MovementRecord,
): boolean {
  return taking.isWhole ? situation.isSettled(record) : situation.isPartySettled(record);
}
