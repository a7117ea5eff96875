import type { LikelyFor } from '../../../questions/likely-sellers.ts';

/**
 * What each kind's form asks for: a kind is a row of this table. Fields common to all movements
 * (the day and the note) are added by the form itself.
 */
interface AnyField {
  /** The record's field, with a dot into it: `waiver.cents`. */
  readonly field: string;
  readonly label: string;
  readonly hint?: string;
  /** May be left empty, and is then left out of the record. */
  readonly optional?: true;
}

export type FieldForm = AnyField &
  (
    | Plain<PlainType>
    /** `usual`: words that are offered to tap. */
    | { readonly type: 'text'; readonly usual?: readonly string[] }
    /** `likely`: which sellers are offered as one tap each. */
    | { readonly type: 'seller'; readonly likely?: LikelyFor }
    | { readonly type: 'thing'; readonly of: Thing }
    /** A record that is pointed at. */
    | { readonly type: 'record'; readonly of: 'payment' | 'debit' }
    | LinesOptions
    | {
        readonly type: 'money';
        /** Which amounts are offered to tap. */
        readonly offer?: 'due' | 'credit' | 'cashbox' | 'cards' | 'supplier' | 'lines';
      }
    | {
        readonly type: 'choice';
        readonly options: readonly (readonly [value: string, words: string])[];
      }
    | CheckOptions
    | { readonly type: 'rows'; readonly columns: readonly RowColumn[] }
  );

/** What needs no more than its field and words. */
type PlainType =
  | 'whole'
  | 'texts'
  | 'day'
  | 'moment'
  | 'counters'
  | 'tally'
  | 'shares'
  | 'pool'
  | 'receipts';

/** One row type each, so that the type tells them apart. */
type Plain<T> = T extends PlainType ? { readonly type: T } : never;

interface LinesOptions {
  readonly type: 'lines';
  /** Written as no goods where it is empty. */
  readonly always?: true;
  /** Zeros are facts, as in a count. */
  readonly zeros?: true;
  /** The figure shown beside each product. */
  readonly beside?: 'stockroom' | 'seller';
}

interface CheckOptions {
  readonly type: 'check';
  /** Written as `false` where it is not ticked; else left out. */
  readonly always?: true;
  /** A tick writes `false`: the words say the opposite of the field. */
  readonly inverse?: true;
  /** How the box stands in a new form. */
  readonly ticked?: true;
}

/** The row of a field of one type. */
export type FieldOf<T extends FieldForm['type']> = Extract<FieldForm, { readonly type: T }>;

/** What a short id may name. `new` ids are made from the name that is typed. */
export type Thing = 'product' | 'family' | 'host' | 'neighbour' | 'stall' | 'level';

export interface RowColumn {
  readonly field: string;
  readonly label: string;
  readonly as: 'seller' | 'product' | 'text' | 'day' | 'time' | 'whole' | 'money' | 'id';
  readonly optional?: true;
}

export interface KindForm {
  /** What happens, in one line under the title. */
  readonly about: string;
  readonly fields: readonly FieldForm[];
  /** One line of care where the work can hurt. */
  readonly care?: string;
}
