import { sum } from '../base/sum.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { stallSettlement, stallStandings } from './stall-settlement.ts';

/** What the money of one settled stall differed by (minor units). */
export interface StallDifference {
  readonly stall: string;
  readonly host: string;
  readonly date: string;
  /** The settle record behind it. */
  readonly record: string;
  /** Have less should: negative is short, positive is over, 0 agrees. */
  readonly difference: number;
}

export interface StallDifferences {
  /** By the day the stall opened. */
  readonly stalls: readonly StallDifference[];
  readonly agreeing: number;
  /** Minor units short and over, each added up by itself: one stall is never set off by another. */
  readonly short: number;
  readonly over: number;
  /** Minor units of the largest difference, short or over. */
  readonly most: number;
}

/** Every settled stall with its difference. @param today `YYYY-MM-DD` */
export function stallDifferences(ledger: Ledger, today: string): StallDifferences {
  const stalls = stallStandings(ledger, today).flatMap(({ stall, closes }) =>
    closes.map((close) => {
      // The record's own cash counts, as in its postings; a tally may be older than an edit.
      const { tally: _tally, ...counted } = close;
      const { difference } = stallSettlement(ledger, counted);
      const { id: record, date } = close;
      return { stall: stall.stall, host: stall.host, date, record, difference };
    }),
  );
  const differences = stalls.map(({ difference }) => difference);
  return {
    stalls,
    agreeing: differences.filter((each) => each === 0).length,
    short: 0 - sum(differences.filter((each) => each < 0)),
    over: sum(differences.filter((each) => each > 0)),
    most: Math.max(0, ...differences.map(Math.abs)),
  };
}
