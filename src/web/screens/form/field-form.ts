/**
 * What each kind's form asks for: a kind is a row of this table. Fields common to all movements
 * (the day and the note) are added by the form itself.
 */
export type FieldForm =
  | {
      readonly type: 'seller';
      readonly field: string;
      readonly label: string;
      readonly optional?: true;
    }
  | { readonly type: 'thing'; readonly of: Thing; readonly field: string; readonly label: string }
  | {
      readonly type: 'record';
      /** Kinds of the record that is pointed at. */
      readonly of: 'payment' | 'debit';
      readonly field: string;
      readonly label: string;
    }
  | {
      readonly type: 'lines';
      readonly field: string;
      readonly label: string;
      readonly hint?: string;
      readonly optional?: true;
      /** Written as no goods where it is empty. */
      readonly always?: true;
      /** Zeros are facts, as in a count. */
      readonly zeros?: true;
      /** The figure shown beside each product. */
      readonly beside?: 'stockroom' | 'seller';
    }
  | {
      readonly type: 'money';
      readonly field: string;
      readonly label: string;
      readonly hint?: string;
      readonly optional?: true;
      /** Which amounts are offered to tap. */
      readonly offer?: 'due' | 'credit' | 'cashbox' | 'cards' | 'supplier' | 'lines';
    }
  | {
      readonly type: 'whole';
      readonly field: string;
      readonly label: string;
      readonly hint?: string;
      readonly optional?: true;
    }
  | {
      readonly type: 'text';
      readonly field: string;
      readonly label: string;
      readonly hint?: string;
      readonly optional?: true;
    }
  | {
      readonly type: 'day';
      readonly field: string;
      readonly label: string;
      readonly hint?: string;
      readonly optional?: true;
    }
  | { readonly type: 'moment'; readonly field: string; readonly label: string }
  | {
      readonly type: 'choice';
      readonly field: string;
      readonly label: string;
      readonly options: readonly (readonly [value: string, words: string])[];
    }
  | {
      readonly type: 'check';
      readonly field: string;
      readonly label: string;
      readonly hint?: string;
      /** Written as `false` where it is not ticked; else left out. */
      readonly always?: true;
      /** A tick writes `false`: the words say the opposite of the field. */
      readonly inverse?: true;
      /** How the box stands in a new form. */
      readonly ticked?: true;
    }
  | {
      readonly type: 'texts';
      readonly field: string;
      readonly label: string;
      readonly hint: string;
    }
  | { readonly type: 'counters'; readonly field: string; readonly label: string }
  | { readonly type: 'tally'; readonly field: string; readonly label: string }
  | { readonly type: 'shares'; readonly field: string; readonly label: string }
  | { readonly type: 'pool'; readonly field: string; readonly label: string }
  | {
      readonly type: 'rows';
      readonly field: string;
      readonly label: string;
      readonly columns: readonly RowColumn[];
      readonly optional?: true;
    };

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
