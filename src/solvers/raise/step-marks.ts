import type { PricedOption } from './option-prices.ts';

export interface Step {
  /** Whole units at which it is reached. */
  readonly height: number;
  /** A whole number, 0 or more. */
  readonly worth: number;
}

/** The heights of the steps that are worth something, from the lowest. */
export class StepMarks {
  private readonly heights: readonly number[];
  /** What each is worth together with all below it. */
  private readonly worths: readonly number[];

  constructor(steps: readonly Step[]) {
    const heights: number[] = [];
    const worths: number[] = [];
    let worth = 0;
    for (const step of steps.toSorted((a, b) => a.height - b.height)) {
      if (step.worth === 0) continue;
      worth += step.worth;
      const at = step.height === heights.at(-1) ? heights.length - 1 : heights.length;
      heights[at] = step.height;
      worths[at] = worth;
    }
    this.heights = heights;
    this.worths = worths;
  }

  /** Worth of all steps at a height or below. */
  worthAt(height: number): number {
    return this.worths[this.reachedAt(height) - 1] ?? 0;
  }

  private reachedAt(height: number): number {
    let reached = 0;
    while ((this.heights[reached] ?? Number.POSITIVE_INFINITY) <= height) reached += 1;
    return reached;
  }

  /**
   * What can be reached from a height, the nearest first; before that: nothing.
   *
   * @param goal counts, where it is above the height @param units that it may cost at most
   */
  optionsFrom(height: number, goal: number | undefined, units: number): readonly PricedOption[] {
    const options = [NOTHING];
    const target = goal !== undefined && goal > height ? goal : Number.POSITIVE_INFINITY;
    const reached = this.reachedAt(height);
    const now = this.worths[reached - 1] ?? 0;
    let last = height;
    for (let at = reached; ; at += 1) {
      const mark = this.heights[at] ?? Number.POSITIVE_INFINITY;
      if (last < target && target < mark && target - height <= units) {
        const gain = (this.worths[at - 1] ?? 0) - now;
        options.push({ cost: target - height, gain, count: 1 });
      }
      if (mark - height > units) return options;
      const gain = (this.worths[at] ?? 0) - now;
      options.push({ cost: mark - height, gain, count: mark >= target ? 1 : 0 });
      last = mark;
    }
  }
}

const NOTHING: PricedOption = { cost: 0, gain: 0, count: 0 };
