import type { RecordOf } from '../../records/record.ts';

/**
 * The kinds of record that one line of text can say. The others (an online order, a share-out, what
 * a bank sends back) point at other records or hold a table, which a form asks for better.
 */
export const lineKinds = [
  'handover',
  'return',
  'pass',
  'order',
  'payment',
  'refund',
  'count',
  'delivery',
  'supply-order',
  'swap-in',
  'swap-out',
  'exchange',
  'gift',
  'loss',
  'found',
  'deposit',
  'card-settle',
  'debit',
  'bank-fee',
  'settle',
  'stall-close',
] as const;

export type LineKind = (typeof lineKinds)[number];

/** A record as a line says it: everything but what the device stamps on it. */
export type LineDraft<K extends LineKind = LineKind> = K extends LineKind
  ? Omit<RecordOf<K>, 'id' | 'at' | 'by'>
  : never;
