import type { Header } from '../../src/records/header.ts';
import type { BookRecord } from '../../src/records/record.ts';
import { type PlannedDay, type PlannedRecord, recordsOf } from '../planned.ts';
import { setupDay } from './setup-plan.ts';
import { weeks1To3 } from './weeks-1-to-3.ts';
import { weeks4To6 } from './weeks-4-to-6.ts';
import { weeks7To9 } from './weeks-7-to-9.ts';

/**
 * The demo season: Wrenfield Young Rowers sell for Larkmead Growers' Co-op, spring 2027. All of it
 * is invented. Five things are still wrong at the end; README.md beside this file lists them.
 */

export const demoHeader: Header = {
  book: 'cratebook/1',
  group: 'wrenfield',
  season: 'spring-2027',
  exported: '2027-04-04T18:00:00.000Z',
};

const SEED = 2027;
const season = [setupDay, ...weeks1To3, ...weeks4To6, ...weeks7To9];

/** The demo book's records, the same at every call. */
export function demoSeason(): BookRecord[] {
  return recordsOf(season, SEED);
}

/** What puts right each of the five things, one record each. */
const mends: readonly PlannedRecord[] = [
  {
    kind: 'handover',
    replaces: '#noa-mint',
    date: '2027-03-16',
    seller: 'noa',
    lines: { jam: 4, 'tea-mint': 21 },
    slip: 'G-024',
    note: 'The slip says 21',
  },
  {
    kind: 'swap-out',
    date: '2027-03-18',
    neighbour: 'fernhill',
    lines: { jam: 6 },
    slip: 'S-5',
  },
  {
    kind: 'gift',
    date: '2027-03-22',
    order: 'O-533',
    seller: 'mei',
    lines: { 'tea-berry': 4 },
    from: 'supplier',
  },
  {
    kind: 'shareout',
    date: '2027-03-27',
    pool: 'stall:garden-0327',
    lines: {
      chidera: {
        chutney: 2,
        granola: 3,
        'granola-nut': 2,
        honey: 3,
        jam: 3,
        'tea-berry': 3,
        'tea-mint': 3,
      },
      noa: {
        chutney: 3,
        granola: 3,
        'granola-nut': 1,
        honey: 3,
        jam: 3,
        'tea-berry': 3,
        'tea-mint': 3,
      },
      petr: {
        chutney: 2,
        granola: 1,
        'granola-nut': 1,
        honey: 1,
        jam: 1,
        'tea-berry': 2,
        'tea-mint': 2,
      },
      rui: {
        chutney: 1,
        granola: 1,
        'granola-nut': 1,
        honey: 2,
        jam: 1,
        'tea-berry': 1,
        'tea-mint': 2,
      },
    },
  },
  {
    kind: 'payment',
    date: '2027-04-04',
    seller: 'reka',
    tender: 'card',
    cents: 10200,
    receipt: 'R-030',
  },
];

/** Ordinary work after the mends: the card payment reaches the bank. */
const afterMends: readonly PlannedRecord[] = [
  { kind: 'card-settle', cents: 10020, fee: 180, to: 'bank', by: 'treasurer' },
];

/** The demo season with all five things put right, ready to close. */
export function demoSeasonMended(): BookRecord[] {
  const mending: PlannedDay = { day: '2027-04-04', records: [...mends, ...afterMends] };
  return recordsOf([...season, mending], SEED);
}
