import type { SetupKind } from '../../../records/record.ts';
import { say } from '../../say.ts';
import type { FieldForm, KindForm } from './field-form.ts';

/** What the form of each kind of set-up asks for. The note is added by the form. */

const seller: FieldForm = { type: 'seller', field: 'seller', label: say`Seller` };
const reason: FieldForm = { type: 'text', field: 'reason', label: say`Reason` };
const name: FieldForm = { type: 'text', field: 'name', label: say`Name` };
export const setupForms: Readonly<Record<SetupKind, KindForm>> = {
  season: {
    about: say`The season’s name, days and deadlines.`,
    fields: [
      name,
      {
        type: 'text',
        field: 'currency',
        label: say`Currency`,
        hint: say`Three letters, like USD.`,
      },
      { type: 'day', field: 'starts', label: say`First day` },
      { type: 'day', field: 'ends', label: say`Last day` },
      { type: 'text', field: 'group', label: say`Name of the group on papers`, optional: true },
      {
        type: 'text',
        field: 'ask',
        label: say`Whom families can ask about a paper`,
        hint: say`An adult of the group who is not the treasurer.`,
        optional: true,
      },
      {
        type: 'rows',
        field: 'deadlines',
        label: say`Deadlines`,
        optional: true,
        columns: [
          { field: 'deadline', label: say`Id`, as: 'id' },
          { field: 'name', label: say`What is due`, as: 'text' },
          { field: 'date', label: say`Day`, as: 'day' },
          { field: 'announced', label: say`Debit announced`, as: 'money', optional: true },
        ],
      },
    ],
  },
  product: {
    about: say`A product, its price and how many units a case holds.`,
    fields: [
      name,
      { type: 'money', field: 'price', label: say`Price of a unit` },
      { type: 'whole', field: 'case', label: say`Units in a case` },
      {
        type: 'day',
        field: 'from',
        label: say`From`,
        hint: say`The first day of this price. Empty: from the season’s start.`,
        optional: true,
      },
      { type: 'text', field: 'storage', label: say`Where and how it is kept`, optional: true },
      { type: 'check', field: 'returnable', label: say`The supplier takes unsold units back` },
      { type: 'check', field: 'retired', label: say`No longer sold` },
    ],
  },
  hold: {
    about: say`Stop selling a product or one lot of it, everywhere, from now on.`,
    care: say`Keep these units apart, tell families and stalls, and follow the supplier’s notice.`,
    fields: [
      { type: 'thing', of: 'product', field: 'product', label: say`Product` },
      { type: 'text', field: 'lot', label: say`Lot`, optional: true },
      reason,
      { type: 'check', field: 'lifted', label: say`Lifted: it may be sold again` },
    ],
  },
  family: {
    about: say`A household, by the adult who answers for its account.`,
    fields: [
      { ...name, label: say`Name of the adult` },
      {
        type: 'text',
        field: 'language',
        label: say`Language it reads`,
        hint: say`A language tag like es or zh-Hans.`,
        optional: true,
      },
      { type: 'text', field: 'contact', label: say`How to reach them`, optional: true },
    ],
  },
  seller: {
    about: say`A child who sells: first name and initial only.`,
    fields: [
      { ...name, label: say`First name and initial` },
      { type: 'thing', of: 'family', field: 'family', label: say`Family` },
      { type: 'whole', field: 'goal', label: say`Goal in units`, optional: true },
      { type: 'check', field: 'active', label: say`Sells this season`, always: true, ticked: true },
    ],
  },
  host: { about: say`A shop or place that hosts stalls.`, fields: [name] },
  neighbour: {
    about: say`Another local group that goods are swapped with.`,
    fields: [name, { type: 'check', field: 'supplier', label: say`The supplier’s own depot` }],
  },
  stall: {
    about: say`A dated selling place at a host shop, and who is there when.`,
    care: say`Two adults at every stall; mind traffic, heat and cold.`,
    fields: [
      { type: 'thing', of: 'host', field: 'host', label: say`Host shop` },
      { type: 'moment', field: 'starts', label: say`Starts` },
      { type: 'moment', field: 'ends', label: say`Ends` },
      {
        type: 'rows',
        field: 'shifts',
        label: say`Shifts`,
        columns: [
          { field: 'seller', label: say`Seller`, as: 'seller' },
          { field: 'from', label: say`From`, as: 'time' },
          { field: 'to', label: say`To`, as: 'time' },
        ],
      },
    ],
  },
  level: {
    about: say`A prize and the units of credit that earn it.`,
    fields: [
      { type: 'whole', field: 'units', label: say`Units that earn it` },
      { type: 'text', field: 'prize', label: say`Prize` },
      {
        type: 'texts',
        field: 'choices',
        label: say`Choices`,
        hint: say`One a line, where one must pick.`,
      },
      {
        type: 'check',
        field: 'each',
        label: say`Takes the place of the lower steps`,
        inverse: true,
      },
    ],
  },
  choice: {
    about: say`What a seller picked at a prize step.`,
    fields: [
      seller,
      { type: 'thing', of: 'level', field: 'level', label: say`Prize step` },
      { type: 'text', field: 'choice', label: say`Choice` },
    ],
  },
  proceeds: {
    about: say`How much of each credited unit the group keeps.`,
    fields: [
      {
        type: 'rows',
        field: 'steps',
        label: say`Steps`,
        columns: [
          { field: 'from', label: say`From units`, as: 'whole' },
          { field: 'cents', label: say`Proceeds a unit`, as: 'money' },
        ],
      },
      {
        type: 'choice',
        field: 'basis',
        label: say`Which step holds is found by`,
        options: [
          ['average', say`average units per active seller`],
          ['total', say`all units together`],
        ],
      },
      {
        type: 'money',
        field: 'waiver.cents',
        label: say`More per unit without prizes`,
        optional: true,
      },
    ],
  },
};
