import type { SetupKind } from '../../../records/record.ts';
import type { FieldForm, KindForm } from './field-form.ts';

/** What the form of each kind of set-up asks for. The note is added by the form. */

const seller: FieldForm = { type: 'seller', field: 'seller', label: 'Seller' };
const reason: FieldForm = { type: 'text', field: 'reason', label: 'Reason' };
const name: FieldForm = { type: 'text', field: 'name', label: 'Name' };
export const setupForms: Readonly<Record<SetupKind, KindForm>> = {
  season: {
    about: 'The season’s name, days and deadlines.',
    fields: [
      name,
      { type: 'text', field: 'currency', label: 'Currency', hint: 'Three letters, like USD.' },
      { type: 'day', field: 'starts', label: 'First day' },
      { type: 'day', field: 'ends', label: 'Last day' },
      { type: 'text', field: 'group', label: 'Name of the group on papers', optional: true },
      {
        type: 'text',
        field: 'ask',
        label: 'Whom families can ask about a paper',
        hint: 'An adult of the group who is not the treasurer.',
        optional: true,
      },
      {
        type: 'rows',
        field: 'deadlines',
        label: 'Deadlines',
        optional: true,
        columns: [
          { field: 'deadline', label: 'Id', as: 'id' },
          { field: 'name', label: 'What is due', as: 'text' },
          { field: 'date', label: 'Day', as: 'day' },
          { field: 'announced', label: 'Debit announced', as: 'money', optional: true },
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
      { type: 'text', field: 'storage', label: 'Where and how it is kept', optional: true },
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
      { type: 'check', field: 'lifted', label: 'Lifted: it may be sold again' },
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
