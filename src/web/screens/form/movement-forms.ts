import type { MovementKind } from '../../../records/record.ts';
import type { FieldForm, KindForm } from './field-form.ts';

/** What the form of each kind of movement asks for. The day and the note are added by the form. */

const seller = { type: 'seller', field: 'seller', label: 'Seller' } as const;
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

export const movementForms: Readonly<Record<MovementKind, KindForm>> = {
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
    fields: [{ ...seller, likely: 'orders' }, { ...lines, beside: 'stockroom' }, slip],
  },
  return: {
    about: 'A family brings goods back and no longer owes their price.',
    fields: [
      { ...seller, likely: 'goods' },
      { ...lines, beside: 'seller' },
    ],
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
      { ...seller, likely: 'due' },
      { type: 'money', field: 'cents', label: 'Amount', offer: 'due' },
      tender,
      { type: 'text', field: 'receipt', label: 'Receipt number', optional: true },
    ],
  },
  refund: {
    about: 'The group pays a family back.',
    fields: [
      { ...seller, likely: 'credit' },
      { type: 'money', field: 'cents', label: 'Amount', offer: 'credit' },
      tender,
    ],
  },
  deposit: {
    about: 'Cash and cheques brought to the bank.',
    care: 'Go by day and in twos, vary the way, and keep the slip.',
    fields: [
      { type: 'receipts', field: 'items', label: 'What is brought to the bank', optional: true },
      { type: 'money', field: 'cents', label: 'Amount', offer: 'cashbox' },
      slip,
    ],
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
};
