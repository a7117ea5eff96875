import type { DigitSlip } from '../../solvers/gap/keyed-number.ts';

/**
 * How often each sort of mistake is made, as data with its source. The odds of an explanation are
 * these rates, shared over the ways in which the mistake can happen, times what the book says for
 * or against it. "Assumed" rates have no published source: the seeded mistakes in
 * simulation/mistakes show how the answers hold with them.
 */
export interface Rate {
  /** Chance that it happens, per what is counted in `per`. */
  readonly rate: number;
  readonly per: 'number' | 'line' | 'record';
  readonly source: string;
}

/** Every sort of single mistake that is looked for. */
export type Sort =
  | DigitSlip
  | 'cases-for-singles'
  | 'miscounted'
  | 'cash-miscounted'
  | 'line-left-out'
  | 'line-too-many'
  | 'lines-swapped'
  | 'number-left-out'
  | 'other-amount'
  | 'not-as-announced'
  | 'float-left-in'
  | 'wrong-product'
  | 'wrong-seller'
  | 'wrong-neighbour'
  | 'wrong-stall'
  | 'wrong-pool'
  | 'wrong-way'
  | 'wrong-tender'
  | 'wrong-source'
  | 'doubled'
  | 'not-ours'
  | 'missing'
  | 'removed-wrongly'
  | 'edited-wrongly'
  | 'wrong-day';

const VERHOEFF =
  'shape of wrong numbers: J. Verhoeff, Error Detecting Decimal Codes, 1969, as told by ' +
  'N. Wagner, Laws of Cryptography';
const ENTRY =
  'data entry 0.2 to 1 % an item: Behavior Research Methods 2019, doi ' +
  '10.3758/s13428-019-01207-3, and R. Panko, Human Error, simple non-trivial tasks; ';
const PICKING = 'manual picking 0.5 to 1 % of lines (figures of vendors, weak)';
const DUPLICATE = 'duplicate payments 0.1 to 0.5 %: Capgemini; 0.8 to 2 % with other faults: APQC';
const TEN = 'out by ten as a class of its own: Thimbleby and Cairns 2010, PMC2935596; rate assumed';
const ASSUMED = 'assumed';

export const errorModel: Readonly<Record<Sort, Rate>> = Object.freeze({
  'wrong-digit': { rate: 0.006, per: 'number', source: ENTRY + VERHOEFF },
  'neighbours-swapped': { rate: 0.001, per: 'number', source: ENTRY + VERHOEFF },
  'digits-swapped': { rate: 0.0001, per: 'number', source: ENTRY + VERHOEFF },
  'digit-left-out': { rate: 0.0005, per: 'number', source: ENTRY + VERHOEFF },
  'digit-added': { rate: 0.0005, per: 'number', source: ENTRY + VERHOEFF },
  'out-by-ten': { rate: 0.0005, per: 'number', source: TEN },
  'out-by-hundred': { rate: 0.0002, per: 'number', source: TEN },
  twin: { rate: 0.0001, per: 'number', source: ENTRY + VERHOEFF },
  'teen-for-ten': { rate: 0.0001, per: 'number', source: ENTRY + VERHOEFF },
  'cases-for-singles': { rate: 0.003, per: 'number', source: ASSUMED },
  miscounted: { rate: 0.004, per: 'line', source: PICKING },
  'cash-miscounted': { rate: 0.01, per: 'record', source: ASSUMED },
  'line-left-out': { rate: 0.002, per: 'record', source: ASSUMED },
  'line-too-many': { rate: 0.0005, per: 'line', source: ASSUMED },
  'lines-swapped': { rate: 0.001, per: 'record', source: ASSUMED },
  'number-left-out': { rate: 0.002, per: 'number', source: ASSUMED },
  'other-amount': { rate: 0.001, per: 'number', source: ASSUMED },
  'not-as-announced': { rate: 0.05, per: 'number', source: ASSUMED },
  'float-left-in': { rate: 0.01, per: 'record', source: ASSUMED },
  'wrong-product': { rate: 0.005, per: 'line', source: PICKING },
  'wrong-seller': { rate: 0.005, per: 'record', source: PICKING },
  'wrong-neighbour': { rate: 0.005, per: 'record', source: PICKING },
  'wrong-stall': { rate: 0.003, per: 'record', source: ASSUMED },
  'wrong-pool': { rate: 0.003, per: 'record', source: ASSUMED },
  'wrong-way': { rate: 0.002, per: 'record', source: ASSUMED },
  'wrong-tender': { rate: 0.005, per: 'record', source: ASSUMED },
  'wrong-source': { rate: 0.005, per: 'record', source: ASSUMED },
  doubled: { rate: 0.005, per: 'record', source: DUPLICATE },
  'not-ours': { rate: 0.0003, per: 'record', source: ASSUMED },
  missing: { rate: 0.01, per: 'record', source: ASSUMED },
  'removed-wrongly': { rate: 0.005, per: 'record', source: ASSUMED },
  'edited-wrongly': { rate: 0.005, per: 'record', source: ASSUMED },
  'wrong-day': { rate: 0.005, per: 'record', source: ASSUMED },
} satisfies Record<Sort, Rate>);

/** What else happens, and how often; each is a part of one. */
export const circumstances = Object.freeze({
  /** A cheque or debit is sent back, and the book does not have it. */
  sentBack: {
    rate: 0.005,
    source: 'about half a per cent of cheques: US Federal Reserve payments studies, from memory',
  },
  /** A payment that was not keyed as a cheque came back as one. */
  wasCheque: { rate: 0.02, source: ASSUMED },
  /** The fee for it is one that the book does not know: whole, within what banks take. */
  unknownWholeFee: {
    rate: 0.02,
    source:
      'fees for a returned cheque, typically $15 to $25: school districts’ pages; spread assumed',
  },
  /** The same, an odd amount, or one that no bank takes. */
  unknownOddFee: { rate: 0.0003, source: ASSUMED },
  /** A number of a series of papers was spoiled, or its paper lost. */
  spoiledPaper: { rate: 0.01, source: ASSUMED },
  /** A record of a kind whose papers run in series had none, or its number was keyed elsewhere. */
  withoutPaper: { rate: 0.1, source: ASSUMED },
});
