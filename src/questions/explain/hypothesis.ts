import type { MovementRecord } from '../../records/record.ts';
import type { Effect } from '../../solvers/gap/effect.ts';
import type { Sort } from './error-model.ts';
import { type NumberField, withNumber } from './number-fields.ts';

/** One single mistake that may have been made. */
export interface Hypothesis {
  readonly sort: Sort;
  /** Chance of the mistake by the error model alone, before what the book says about it. */
  readonly chance: number;
  /** The record that is wrong; undefined where one is missing. */
  readonly record?: MovementRecord;
  /** One number that is wrong, and what it should be. */
  readonly field?: NumberField;
  readonly to?: number;
  /** What the record should say, where more than one number is wrong. */
  readonly becomes?: MovementRecord;
  /** The record that is missing; its id, time and writer are still empty. */
  readonly adds?: MovementRecord;
  /** The record of which this one is a double. */
  readonly twin?: MovementRecord;
  /** The removal that should not have been. */
  readonly removal?: string;
  /** A record that makes a missing one likely: an order, a planned stall, a paid gift. */
  readonly because?: string;
}

/** Collects hypotheses; what cannot be part of an answer need not be made. */
export interface Taking {
  /** True where only what accounts for the whole difference by itself is taken. */
  readonly isWhole: boolean;
  /** How many times an effect has to be taken; undefined where any number may do, 0 where none. */
  timesOf(effect: Effect): number | undefined;
  /** True where an effect, taken so many times, may be part of an answer. */
  fits(effect: Effect, times: number): boolean;
  /** Takes a hypothesis with its effect on what was looked at. */
  take(effect: Effect, times: number, hypothesis: Hypothesis): void;
}

/** The record that counts now, and the one that should; either may be missing. */
export function outcomeOf(hypothesis: Hypothesis): {
  readonly before: MovementRecord | undefined;
  readonly after: MovementRecord | undefined;
} {
  const { record, field, to, becomes, adds, removal } = hypothesis;
  if (adds !== undefined) return { before: undefined, after: adds };
  if (removal !== undefined) return { before: undefined, after: record };
  if (becomes !== undefined || record === undefined) return { before: record, after: becomes };
  if (field === undefined || to === undefined) return { before: record, after: undefined };
  return { before: record, after: withNumber(record, field, to) };
}
