import type { MovementKind } from '../../../records/record.ts';
import { say } from '../../say.ts';
import type { FieldForm, FieldOf, KindForm } from './field-form.ts';

/** What the form of each kind of movement asks for. The day and the note are added by the form. */

const seller = { type: 'seller', field: 'seller', label: say`Seller` } as const;
const maybeSeller: FieldForm = { ...seller, optional: true };
const lines: FieldForm = { type: 'lines', field: 'lines', label: say`Goods` };
const slip: FieldForm = { type: 'text', field: 'slip', label: say`Slip number`, optional: true };
const reason: FieldOf<'text'> = { type: 'text', field: 'reason', label: say`Reason` };
const neighbour: FieldForm = {
  type: 'thing',
  of: 'neighbour',
  field: 'neighbour',
  label: say`Neighbour group`,
};
const tender: FieldForm = {
  type: 'choice',
  field: 'tender',
  label: say`Paid how`,
  options: [
    ['cash', say`Cash`],
    ['cheque', say`Cheque`],
    ['card', say`Card`],
  ],
};
const fee: FieldForm = { type: 'money', field: 'fee', label: say`The bank’s fee`, optional: true };
const LIFTING = say`Lift with the knees, share heavy cases, and keep goods that need it cold.`;
const CASH = say`Count cash with a second person, away from the door.`;

export const movementForms: Readonly<Record<MovementKind, KindForm>> = {
  delivery: {
    about: say`Goods taken over from the supplier. Write what was counted, not what the slip says.`,
    care: LIFTING,
    fields: [
      lines,
      slip,
      { type: 'text', field: 'depot', label: say`Depot`, optional: true },
      {
        type: 'lines',
        field: 'short',
        label: say`On the slip but not there`,
        optional: true,
      },
      {
        type: 'rows',
        field: 'lots',
        label: say`Lots`,
        optional: true,
        columns: [
          { field: 'product', label: say`Product`, as: 'product' },
          { field: 'lot', label: say`Lot`, as: 'text' },
          { field: 'bestBefore', label: say`Best before`, as: 'day', optional: true },
          { field: 'units', label: say`Units`, as: 'whole', optional: true },
        ],
      },
    ],
  },
  handover: {
    about: say`A family takes goods over and owes their price.`,
    care: LIFTING,
    fields: [{ ...seller, likely: 'orders' }, { ...lines, beside: 'stockroom' }, slip],
  },
  return: {
    about: say`A family brings goods back and no longer owes their price.`,
    fields: [
      { ...seller, likely: 'goods' },
      { ...lines, beside: 'seller' },
    ],
  },
  pass: {
    about: say`One seller passes goods to another, with what is owed and the credit.`,
    fields: [
      { type: 'seller', field: 'from', label: say`From` },
      { type: 'seller', field: 'to', label: say`To` },
      lines,
    ],
  },
  'swap-in': {
    about: say`Goods taken from a neighbour group, with what is owed to the supplier for them.`,
    fields: [neighbour, lines, slip],
  },
  'swap-out': {
    about: say`Goods given to a neighbour group, with what is owed to the supplier for them.`,
    fields: [neighbour, { ...lines, beside: 'stockroom' }, slip],
  },
  exchange: {
    about: say`The supplier swaps damaged units one for one. It changes no balance.`,
    fields: [lines],
  },
  gift: {
    about: say`Units bought to be given away.`,
    fields: [
      maybeSeller,
      {
        type: 'choice',
        field: 'from',
        label: say`Given on by`,
        options: [
          ['supplier', say`The supplier`],
          ['stockroom', say`Us, out of the stockroom`],
        ],
      },
      lines,
      { type: 'text', field: 'order', label: say`Online order number`, optional: true },
    ],
  },
  loss: {
    about: say`Goods written off, or an amount a family will not pay. A second person should
      agree.`,
    fields: [
      { ...lines, optional: true, beside: 'stockroom' },
      maybeSeller,
      {
        type: 'money',
        field: 'cents',
        label: say`Amount given up`,
        hint: say`Only with a seller and without goods.`,
        optional: true,
      },
      {
        ...reason,
        usual: [say`Broken`, say`Out of date`, say`Lost`, say`Given as tasting`],
      },
    ],
  },
  found: {
    about: say`Goods on the shelf that the book did not have.`,
    fields: [lines, reason],
  },
  payment: {
    about: say`A family pays the group.`,
    care: CASH,
    fields: [
      { ...seller, likely: 'due' },
      { type: 'money', field: 'cents', label: say`Amount`, offer: 'due' },
      tender,
      { type: 'text', field: 'receipt', label: say`Receipt number`, optional: true },
    ],
  },
  refund: {
    about: say`The group pays a family back.`,
    fields: [
      { ...seller, likely: 'credit' },
      { type: 'money', field: 'cents', label: say`Amount`, offer: 'credit' },
      tender,
    ],
  },
  deposit: {
    about: say`Cash and cheques brought to the bank.`,
    care: say`Go by day and in twos, vary the way, and keep the slip.`,
    fields: [
      { type: 'receipts', field: 'items', label: say`What is brought to the bank`, optional: true },
      { type: 'money', field: 'cents', label: say`Amount`, offer: 'cashbox' },
      slip,
    ],
  },
  'card-settle': {
    about: say`Card takings arrive, less the fee.`,
    fields: [
      { type: 'money', field: 'cents', label: say`Amount that arrived`, offer: 'cards' },
      { type: 'money', field: 'fee', label: say`Fee kept back`, hint: say`0 where there is none.` },
      {
        type: 'choice',
        field: 'to',
        label: say`Arrived at`,
        options: [
          ['bank', say`Our bank account`],
          ['supplier', say`The supplier, against what we owe`],
        ],
      },
    ],
  },
  debit: {
    about: say`The supplier takes what it is owed from the bank account.`,
    fields: [
      { type: 'money', field: 'cents', label: say`Amount taken`, offer: 'supplier' },
      { type: 'money', field: 'announced', label: say`Amount announced`, optional: true },
    ],
  },
  'debit-returned': {
    about: say`The bank sends a debit back: what was owed stands again.`,
    fields: [{ type: 'record', of: 'debit', field: 'debit', label: say`Debit` }, fee],
  },
  'bank-fee': {
    about: say`The bank charges the account.`,
    fields: [{ type: 'money', field: 'cents', label: say`Amount` }],
  },
  bounced: {
    about: say`A cheque came back: the family owes the amount again.`,
    fields: [
      { type: 'record', of: 'payment', field: 'payment', label: say`Cheque` },
      fee,
      { type: 'check', field: 'charge', label: say`The family owes the fee too` },
    ],
  },
  settle: {
    about: say`The supplier credits the group’s proceeds.`,
    fields: [{ type: 'money', field: 'proceeds', label: say`Proceeds` }],
  },
  order: {
    about: say`A family hands in the orders it gathered. It moves nothing yet.`,
    fields: [
      seller,
      lines,
      { type: 'lines', field: 'gifts', label: say`To be given away`, optional: true },
      {
        type: 'money',
        field: 'paid',
        label: say`Money handed in with it`,
        hint: say`For comparison: record the money itself as a payment.`,
        optional: true,
      },
    ],
  },
  'supply-order': {
    about: say`The group orders from the supplier. It moves nothing until goods are delivered.`,
    fields: [
      lines,
      slip,
      { type: 'day', field: 'expected', label: say`Expected on`, optional: true },
    ],
  },
  online: {
    about: say`A buyer paid the supplier online.`,
    fields: [
      { type: 'text', field: 'order', label: say`Order number` },
      maybeSeller,
      {
        type: 'choice',
        field: 'sent',
        label: say`How the goods reach the buyer`,
        options: [
          ['post', say`The supplier posts them`],
          ['hand', say`The seller brings them`],
        ],
      },
      { ...lines, optional: true, always: true },
      { type: 'lines', field: 'gifts', label: say`Bought to be given away`, optional: true },
      { type: 'money', field: 'paid', label: say`Paid`, offer: 'lines' },
    ],
  },
  'stall-close': {
    about: say`A stall’s count and takings.`,
    care: CASH,
    fields: [
      { type: 'thing', of: 'stall', field: 'stall', label: say`Stall` },
      { type: 'lines', field: 'out', label: say`Taken out`, zeros: true, beside: 'stockroom' },
      { type: 'lines', field: 'back', label: say`Brought back`, zeros: true },
      { type: 'lines', field: 'damaged', label: say`Damaged`, zeros: true, optional: true },
      {
        type: 'money',
        field: 'float',
        label: say`Float at the start`,
        hint: say`0 where there was none.`,
      },
      { type: 'tally', field: 'tally', label: say`Cash, note by note` },
      {
        type: 'money',
        field: 'cash',
        label: say`Cash at the end`,
        hint: say`With the float. Filled in from the notes and coins where they are counted.`,
      },
      {
        type: 'money',
        field: 'cards',
        label: say`Card takings`,
        hint: say`0 where there were none.`,
      },
      { type: 'money', field: 'cheques', label: say`Cheques`, hint: say`0 where there were none.` },
      { type: 'money', field: 'paidout', label: say`Spent from the box`, optional: true },
      { type: 'counters', field: 'counters', label: say`Counted by` },
    ],
  },
  shareout: {
    about: say`Units of a pool credited to sellers.`,
    fields: [
      { type: 'pool', field: 'pool', label: say`Pool` },
      { type: 'shares', field: 'lines', label: say`Units to each seller` },
    ],
  },
  count: {
    about: say`The stockroom was counted. It moves nothing and states a fact.`,
    fields: [
      { ...lines, label: say`Counted`, zeros: true, hint: say`Write 0 where there is none.` },
      { type: 'counters', field: 'counters', label: say`Counted by` },
    ],
  },
};
