/** What the supplier's statement says happened, by its own lines. */
export interface SupplierFile {
  readonly lines: readonly SupplierLine[];
  /** What the group owes by the statement, in minor units, where it says so. */
  readonly owed: number | undefined;
}

/** The sorts of line that a supplier's statement has; `other` where its words tell none of them. */
const supplierSorts = [
  'delivery',
  'swap-in',
  'swap-out',
  'exchange',
  'debit',
  'debit-returned',
  'card',
  'posted',
  'online',
  'gift',
  'proceeds',
  'other',
] as const;

export type SupplierSort = (typeof supplierSorts)[number];

export interface SupplierLine {
  /** Its place among the file's own lines, from 1. */
  readonly line: number;
  readonly date: string;
  readonly sort: SupplierSort;
  /** Whole units by product where the line is about goods; empty where it is about money. */
  readonly goods: Readonly<Record<string, number>>;
  /** Minor units without a sign, where the line says an amount. */
  readonly cents: number | undefined;
  /** Slip, order or payment number. */
  readonly reference: string | undefined;
  /** Id of the neighbour group that a swap was made with, where the book knows it. */
  readonly neighbour: string | undefined;
  readonly text: string;
}
