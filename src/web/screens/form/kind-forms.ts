import type { Kind } from '../../../records/record.ts';

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

const seller: FieldForm = { type: 'seller', field: 'seller', label: 'Seller' };
const maybeSeller: FieldForm = { ...seller, optional: true };
const lines: FieldForm = { type: 'lines', field: 'lines', label: 'Goods' };
const slip: FieldForm = { type: 'text', field: 'slip', label: 'Slip number', optional: true };
const reason: FieldForm = { type: 'text', field: 'reason', label: 'Reason' };
const neighbour: FieldForm = {
  type: 'thing',
  of: 'neighbour',
  field: 'neighbour',
  label: 'Neighbour group',
};
const name: FieldForm = { type: 'text', field: 'name', label: 'Name' };
const tender: FieldForm = {
  type: 'choice',
  field: 'tender',
  label: 'Paid how',
  options: [
    ['cash', 'Cash'],
    ['cheque', 'Cheque'],
    ['card', 'Card'],
  ],
};
const fee: FieldForm = { type: 'money', field: 'fee', label: 'The bank’s fee', optional: true };
const LIFTING = 'Lift with the knees, share heavy cases, and keep goods that need it cold.';
const CASH = 'Count cash with a second person, away from the door.';

export const kindForms: Readonly<Record<Exclude<Kind, 'void'>, KindForm>> = {
  delivery: {
    about: 'Goods taken over from the supplier. Write what was counted, not what the slip says.',
    care: LIFTING,
    fields: [
      lines,
      slip,
      { type: 'text', field: 'depot', label: 'Depot', optional: true },
      {
        type: 'lines',
        field: 'short',
        label: 'On the slip but not there',
        optional: true,
      },
      {
        type: 'rows',
        field: 'lots',
        label: 'Lots',
        optional: true,
        columns: [
          { field: 'product', label: 'Product', as: 'product' },
          { field: 'lot', label: 'Lot', as: 'text' },
          { field: 'bestBefore', label: 'Best before', as: 'day', optional: true },
          { field: 'units', label: 'Units', as: 'whole', optional: true },
        ],
      },
    ],
  },
  handover: {
    about: 'A family takes goods over and owes their price.',
    care: LIFTING,
    fields: [seller, { ...lines, beside: 'stockroom' }, slip],
  },
  return: {
    about: 'A family brings goods back and no longer owes their price.',
    fields: [seller, { ...lines, beside: 'seller' }],
  },
  pass: {
    about: 'One seller passes goods to another, with what is owed and the credit.',
    fields: [
      { type: 'seller', field: 'from', label: 'From' },
      { type: 'seller', field: 'to', label: 'To' },
      lines,
    ],
  },
  'swap-in': {
    about: 'Goods taken from a neighbour group, with what is owed to the supplier for them.',
    fields: [neighbour, lines, slip],
  },
  'swap-out': {
    about: 'Goods given to a neighbour group, with what is owed to the supplier for them.',
    fields: [neighbour, { ...lines, beside: 'stockroom' }, slip],
  },
  exchange: {
    about: 'The supplier swaps damaged units one for one. It changes no balance.',
    fields: [lines],
  },
  gift: {
    about: 'Units bought to be given away.',
    fields: [
      maybeSeller,
      {
        type: 'choice',
        field: 'from',
        label: 'Given on by',
        options: [
          ['supplier', 'The supplier'],
          ['stockroom', 'Us, out of the stockroom'],
        ],
      },
      lines,
      { type: 'text', field: 'order', label: 'Online order number', optional: true },
    ],
  },
  loss: {
    about: 'Goods written off, or an amount a family will not pay. A second person should agree.',
    fields: [
      { ...lines, optional: true, beside: 'stockroom' },
      maybeSeller,
      {
        type: 'money',
        field: 'cents',
        label: 'Amount given up',
        hint: 'Only with a seller and without goods.',
        optional: true,
      },
      reason,
    ],
  },
  found: {
    about: 'Goods on the shelf that the book did not have.',
    fields: [lines, reason],
  },
  payment: {
    about: 'A family pays the group.',
    care: CASH,
    fields: [
      seller,
      { type: 'money', field: 'cents', label: 'Amount', offer: 'due' },
      tender,
      { type: 'text', field: 'receipt', label: 'Receipt number', optional: true },
    ],
  },
  refund: {
    about: 'The group pays a family back.',
    fields: [seller, { type: 'money', field: 'cents', label: 'Amount', offer: 'credit' }, tender],
  },
  deposit: {
    about: 'Cash and cheques brought to the bank.',
    care: 'Go by day and in twos, vary the way, and keep the slip.',
    fields: [{ type: 'money', field: 'cents', label: 'Amount', offer: 'cashbox' }, slip],
  },
  'card-settle': {
    about: 'Card takings arrive, less the fee.',
    fields: [
      { type: 'money', field: 'cents', label: 'Amount that arrived', offer: 'cards' },
      { type: 'money', field: 'fee', label: 'Fee kept back', hint: '0 where there is none.' },
      {
        type: 'choice',
        field: 'to',
        label: 'Arrived at',
        options: [
          ['bank', 'Our bank account'],
          ['supplier', 'The supplier, against what we owe'],
        ],
      },
    ],
  },
  debit: {
    about: 'The supplier takes what it is owed from the bank account.',
    fields: [
      { type: 'money', field: 'cents', label: 'Amount taken', offer: 'supplier' },
      { type: 'money', field: 'announced', label: 'Amount announced', optional: true },
    ],
  },
  'debit-returned': {
    about: 'The bank sends a debit back: what was owed stands again.',
    fields: [{ type: 'record', of: 'debit', field: 'debit', label: 'Debit' }, fee],
  },
  'bank-fee': {
    about: 'The bank charges the account.',
    fields: [{ type: 'money', field: 'cents', label: 'Amount' }],
  },
  bounced: {
    about: 'A cheque came back: the family owes the amount again.',
    fields: [
      { type: 'record', of: 'payment', field: 'payment', label: 'Cheque' },
      fee,
      { type: 'check', field: 'charge', label: 'The family owes the fee too' },
    ],
  },
  settle: {
    about: 'The supplier credits the group’s proceeds.',
    fields: [{ type: 'money', field: 'proceeds', label: 'Proceeds' }],
  },
  order: {
    about: 'A family hands in the orders it gathered. It moves nothing yet.',
    fields: [
      seller,
      lines,
      { type: 'lines', field: 'gifts', label: 'To be given away', optional: true },
      {
        type: 'money',
        field: 'paid',
        label: 'Money handed in with it',
        hint: 'For comparison: record the money itself as a payment.',
        optional: true,
      },
    ],
  },
  'supply-order': {
    about: 'The group orders from the supplier. It moves nothing until goods are delivered.',
    fields: [lines, slip, { type: 'day', field: 'expected', label: 'Expected on', optional: true }],
  },
  online: {
    about: 'A buyer paid the supplier online.',
    fields: [
      { type: 'text', field: 'order', label: 'Order number' },
      maybeSeller,
      {
        type: 'choice',
        field: 'sent',
        label: 'How the goods reach the buyer',
        options: [
          ['post', 'The supplier posts them'],
          ['hand', 'The seller brings them'],
        ],
      },
      { ...lines, optional: true, always: true },
      { type: 'lines', field: 'gifts', label: 'Bought to be given away', optional: true },
      { type: 'money', field: 'paid', label: 'Paid', offer: 'lines' },
    ],
  },
  'stall-close': {
    about: 'A stall’s count and takings.',
    care: CASH,
    fields: [
      { type: 'thing', of: 'stall', field: 'stall', label: 'Stall' },
      { type: 'lines', field: 'out', label: 'Taken out', zeros: true, beside: 'stockroom' },
      { type: 'lines', field: 'back', label: 'Brought back', zeros: true },
      { type: 'lines', field: 'damaged', label: 'Damaged', zeros: true, optional: true },
      {
        type: 'money',
        field: 'float',
        label: 'Float at the start',
        hint: '0 where there was none.',
      },
      { type: 'tally', field: 'tally', label: 'Cash, note by note' },
      {
        type: 'money',
        field: 'cash',
        label: 'Cash at the end',
        hint: 'With the float. Filled in from the notes and coins where they are counted.',
      },
      { type: 'money', field: 'cards', label: 'Card takings', hint: '0 where there were none.' },
      { type: 'money', field: 'cheques', label: 'Cheques', hint: '0 where there were none.' },
      { type: 'money', field: 'paidout', label: 'Spent from the box', optional: true },
      { type: 'counters', field: 'counters', label: 'Counted by' },
    ],
  },
  shareout: {
    about: 'Units of a pool credited to sellers.',
    fields: [
      { type: 'pool', field: 'pool', label: 'Pool' },
      { type: 'shares', field: 'lines', label: 'Units to each seller' },
    ],
  },
  count: {
    about: 'The stockroom was counted. It moves nothing and states a fact.',
    fields: [
      { ...lines, label: 'Counted', zeros: true, hint: 'Write 0 where there is none.' },
      { type: 'counters', field: 'counters', label: 'Counted by' },
    ],
  },
  season: {
    about: 'The season’s name, days and deadlines.',
    fields: [
      name,
      { type: 'text', field: 'currency', label: 'Currency', hint: 'Three letters, like USD.' },
      { type: 'day', field: 'starts', label: 'First day' },
      { type: 'day', field: 'ends', label: 'Last day' },
      {
        type: 'rows',
        field: 'deadlines',
        label: 'Deadlines',
        optional: true,
        columns: [
          { field: 'deadline', label: 'Id', as: 'id' },
          { field: 'name', label: 'What is due', as: 'text' },
          { field: 'date', label: 'Day', as: 'day' },
        ],
      },
    ],
  },
  product: {
    about: 'A product, its price and how many units a case holds.',
    fields: [
      name,
      { type: 'money', field: 'price', label: 'Price of a unit' },
      { type: 'whole', field: 'case', label: 'Units in a case' },
      {
        type: 'day',
        field: 'from',
        label: 'From',
        hint: 'The first day of this price. Empty: from the season’s start.',
        optional: true,
      },
      { type: 'text', field: 'storage', label: 'How to keep it', optional: true },
      { type: 'check', field: 'returnable', label: 'The supplier takes unsold units back' },
      { type: 'check', field: 'retired', label: 'No longer sold' },
    ],
  },
  hold: {
    about: 'Stop selling a product or one lot of it, everywhere, from now on.',
    care: 'Keep these units apart, tell families and stalls, and follow the supplier’s notice.',
    fields: [
      { type: 'thing', of: 'product', field: 'product', label: 'Product' },
      { type: 'text', field: 'lot', label: 'Lot', optional: true },
      reason,
      { type: 'check', field: 'lifted', label: 'The hold is lifted' },
    ],
  },
  family: {
    about: 'A household, by the adult who answers for its account.',
    fields: [
      { ...name, label: 'Name of the adult' },
      {
        type: 'text',
        field: 'language',
        label: 'Language it reads',
        hint: 'A language tag like es or zh-Hans.',
        optional: true,
      },
      { type: 'text', field: 'contact', label: 'How to reach them', optional: true },
    ],
  },
  seller: {
    about: 'A child who sells: first name and initial only.',
    fields: [
      { ...name, label: 'First name and initial' },
      { type: 'thing', of: 'family', field: 'family', label: 'Family' },
      { type: 'whole', field: 'goal', label: 'Goal in units', optional: true },
      { type: 'check', field: 'active', label: 'Sells this season', always: true, ticked: true },
    ],
  },
  host: { about: 'A shop or place that hosts stalls.', fields: [name] },
  neighbour: { about: 'Another local group that goods are swapped with.', fields: [name] },
  stall: {
    about: 'A dated selling place at a host shop, and who is there when.',
    care: 'Two adults at every stall; mind traffic, heat and cold.',
    fields: [
      { type: 'thing', of: 'host', field: 'host', label: 'Host shop' },
      { type: 'moment', field: 'starts', label: 'Starts' },
      { type: 'moment', field: 'ends', label: 'Ends' },
      {
        type: 'rows',
        field: 'shifts',
        label: 'Shifts',
        columns: [
          { field: 'seller', label: 'Seller', as: 'seller' },
          { field: 'from', label: 'From', as: 'time' },
          { field: 'to', label: 'To', as: 'time' },
        ],
      },
    ],
  },
  level: {
    about: 'A prize and the units of credit that earn it.',
    fields: [
      { type: 'whole', field: 'units', label: 'Units that earn it' },
      { type: 'text', field: 'prize', label: 'Prize' },
      {
        type: 'texts',
        field: 'choices',
        label: 'Choices',
        hint: 'One a line, where one must pick.',
      },
      { type: 'check', field: 'each', label: 'Takes the place of the lower steps', inverse: true },
    ],
  },
  choice: {
    about: 'What a seller picked at a prize step.',
    fields: [
      seller,
      { type: 'thing', of: 'level', field: 'level', label: 'Prize step' },
      { type: 'text', field: 'choice', label: 'Choice' },
    ],
  },
  proceeds: {
    about: 'How much of each credited unit the group keeps.',
    fields: [
      {
        type: 'rows',
        field: 'steps',
        label: 'Steps',
        columns: [
          { field: 'from', label: 'From units', as: 'whole' },
          { field: 'cents', label: 'Proceeds a unit', as: 'money' },
        ],
      },
      {
        type: 'choice',
        field: 'basis',
        label: 'Which step holds is found by',
        options: [
          ['average', 'average units per active seller'],
          ['total', 'all units together'],
        ],
      },
      {
        type: 'money',
        field: 'waiver.cents',
        label: 'More per unit without prizes',
        optional: true,
      },
    ],
  },
};

/** The kinds in the order and groups in which the list of all forms shows them. */
export const kindGroups: readonly (readonly [words: string, kinds: readonly Kind[]])[] = [
  [
    'Goods',
    [
      'delivery',
      'handover',
      'return',
      'pass',
      'swap-in',
      'swap-out',
      'exchange',
      'gift',
      'loss',
      'found',
      'count',
    ],
  ],
  [
    'Money',
    [
      'payment',
      'refund',
      'deposit',
      'card-settle',
      'debit',
      'debit-returned',
      'bank-fee',
      'bounced',
      'settle',
    ],
  ],
  ['Orders', ['order', 'supply-order', 'online']],
  ['Stalls', ['stall', 'stall-close', 'shareout']],
  [
    'Set-up',
    [
      'season',
      'product',
      'family',
      'seller',
      'host',
      'neighbour',
      'level',
      'choice',
      'proceeds',
      'hold',
    ],
  ],
];
