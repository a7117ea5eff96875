import type { AccountEvent, PartName } from '../questions/account-entries.ts';
import { sentence } from './sentence.ts';

/**
 * Every word that a paper says, in English. A second language is a second object of this shape;
 * the papers themselves spell nothing out. Words of the trade only (DESIGN 1); amounts and units
 * come in as texts, direction is always in words.
 */
export const wordsEn = {
  /** BCP 47 tag of the language these words are in. */
  language: 'en',
  months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],

  pageOf: 'Page {page} of {pages}',
  asAt: 'As at',
  day: 'Day',
  family: 'Family',
  seller: 'Seller',
  sellers: 'Sellers',
  product: 'Product',
  units: 'Units',
  amount: 'Amount',
  total: 'Total',
  season: 'Season',
  record: 'Record',
  lastRecord: 'Last record',
  none: 'none',
  stillToPay: 'Still to pay',
  /** Minor amounts as text; `owes` false means the family is in credit. */
  balance: (amount: string, owes: boolean) =>
    owes ? `still to pay ${amount}` : `in credit ${amount}`,
  signName: 'Name',
  signature: 'Signature',
  signDay: 'Day',

  statement: {
    title: (name: string) => `Statement for ${name}`,
    titleOfAll: 'Statements',
    everyLine: 'Every line',
    what: 'What happened',
    addsOrTakesOff: 'Adds +, takes off −',
    stillToPay: 'Still to pay',
    inCredit: (amount: string) => `in credit ${amount}`,
    creditUnits: 'Credit units',
    credit: (units: string) => `Credit towards prizes: ${units} units. Credit is never money.`,
    creditNote: 'Credit units count towards prizes and are never money.',
    noLines: 'Nothing has been written down for this family yet.',
    ask: (name: string) =>
      `Something not right, or a line you do not know? Ask ${name}, who is not the treasurer.`,
    askAnyone: 'Something not right? Ask a leader of the group who is not the treasurer.',
  },

  /** The parts of a sum inside a sentence; the first one starts with a capital. */
  parts: {
    taken: (units: string) => `taken ${units}`,
    received: (units: string) => `received from others ${units}`,
    posted: (units: string) => `posted to buyers ${units}`,
    gifts: (units: string) => `gift units ${units}`,
    broughtBack: (units: string) => `brought back ${units}`,
    passedOn: (units: string) => `passed on ${units}`,
    paid: (_units: string, amount: string) => `paid ${amount}`,
    bounced: (_units: string, amount: string) => `cheque that came back ${amount}`,
    bankFees: (_units: string, amount: string) => `bank fee ${amount}`,
    paidOnline: (_units: string, amount: string) => `paid online by buyers ${amount}`,
    refunded: (_units: string, amount: string) => `paid back to the family ${amount}`,
    givenUp: (_units: string, amount: string) => `no longer asked for ${amount}`,
  } satisfies Record<PartName, (units: string, amount: string) => string>,

  /** The same parts as a sum in money; the words say which way each one counts. */
  partsInMoney: {
    taken: 'Taken',
    received: 'plus received from other sellers',
    posted: 'plus posted to buyers',
    gifts: 'plus gift units',
    broughtBack: 'less brought back',
    passedOn: 'less passed on to other sellers',
    paid: 'less paid',
    bounced: 'plus cheques that came back',
    bankFees: 'plus bank fees for them',
    paidOnline: 'less paid online by buyers',
    refunded: 'plus paid back to the family',
    givenUp: 'less no longer asked for',
  } satisfies Record<PartName, string>,

  /** What a line of an account says; goods, the other seller and tender come in as texts. */
  events: {
    'goods-out': ({ goods }) => `Goods out: ${goods}`,
    'goods-back': ({ goods }) => `Goods back: ${goods}`,
    received: ({ goods, other }) => `Received from ${other}: ${goods}`,
    'passed-on': ({ goods, other }) => `Passed on to ${other}: ${goods}`,
    'posted-order': ({ goods }) => `Posted to a buyer, paid online: ${goods}`,
    'online-order': ({ goods }) => `Paid online, to be brought: ${goods}`,
    'gift-units': ({ goods }) => `Gift units: ${goods}`,
    payment: ({ tender }) => `Payment, ${tender}`,
    refund: ({ tender }) => `Paid back, ${tender}`,
    'cheque-back': () => 'Cheque came back',
    'given-up': () => 'No longer asked for',
    'share-out': ({ goods }) => `Credit shared out: ${goods}`,
  } satisfies Record<AccountEvent, (line: LineTexts) => string>,
  reference: {
    'goods-out': 'slip',
    payment: 'receipt',
    'posted-order': 'order',
    'online-order': 'order',
    'gift-units': 'order',
  } as Partial<Record<AccountEvent, string>>,
  tenders: { cash: 'cash', cheque: 'cheque', card: 'card' },
  toGiveAway: (goods: string) => `to give away ${goods}`,

  slip: {
    titles: { handover: 'Goods out', return: 'Goods back', pass: 'Goods passed on' },
    number: 'Slip',
    lead: {
      handover: (units: string, amount: string, seller: string) =>
        `${seller} takes over ${units} units at ${amount}.`,
      return: (units: string, amount: string, seller: string) =>
        `${seller} brings back ${units} units at ${amount}.`,
      pass: (units: string, amount: string, seller: string, to: string) =>
        sentence(`${seller} passes ${units} units at ${amount} on to ${to}`),
    },
    terms: {
      handover: 'From now on the family owes the price of these goods, or brings them back.',
      return: 'From now on the family no longer owes the price of these goods.',
      pass: 'From now on the price of these goods, and their credit, go with them.',
    },
    cases: 'Cases',
    singles: 'Singles',
    unitPrice: 'Price',
    caution: 'Cases are heavy: lift with two, and load away from traffic.',
    signers: {
      handover: ['Handed over by', 'Taken over by'],
      return: ['Brought back by', 'Taken back by'],
      pass: ['Passed on by', 'Taken over by'],
    },
  },

  receipt: {
    title: (number: string) => `Receipt ${number}`,
    titleBare: 'Receipt',
    number: 'Receipt number',
    noNumber: 'none given',
    lead: (amount: string, tender: string, name: string) =>
      sentence(`Received ${amount} ${tender} from ${name}`),
    tenders: { cash: 'in cash', cheque: 'by cheque', card: 'by card' },
    paidBy: 'Received from',
    after: 'After this payment',
    cheque: 'A cheque counts as paid once the bank has cleared it.',
    keep: 'Keep this receipt until the season is closed.',
    signer: 'Received by',
  },

  refund: {
    title: 'Refund receipt',
    lead: (amount: string, tender: string, name: string) =>
      sentence(`Paid back ${amount} ${tender} to ${name}`),
    paidTo: 'Paid back to',
    after: 'After this refund',
    keep: 'One copy stays with the group, one with the family, until the season is closed.',
    signers: ['Paid back by', 'Received by'],
  },

  countSheet: {
    title: 'Count sheet',
    place: 'Place',
    stockroom: 'Stockroom',
    shelf: 'Kept at',
    caseOf: 'Case of',
    cases: 'Full cases',
    singles: 'Singles',
    lead: 'Count what is there. Write 0 where there is none.',
    how:
      'Two people count, each on a sheet of their own, and compare when both are done. ' +
      'A case that is open counts as singles.',
    caution: 'Use a step for high shelves and lift heavy cases with two.',
    counters: ['First counter', 'Second counter'],
  },

  proof: {
    title: 'Season proof',
    agrees: (units: string) => `${units} units to account for, and all of them are accounted for.`,
    differs: (units: string, products: string) =>
      sentence(`${units} units to account for. Not agreeing yet: ${products}`),
    cameIn: 'What came in (units)',
    places: 'Where it is (units)',
    delivered: 'Delivered',
    swappedIn: 'Swapped in',
    swappedOut: 'Swapped out',
    broughtBack: 'Back to supplier',
    toAccountFor: 'To account for',
    families: 'Families',
    stalls: 'Stalls',
    given: 'Given away',
    lost: 'Lost',
    shelf: 'On the shelf',
    accountedFor: 'Accounted for',
    difference: 'Difference',
    agree: 'agrees',
    short: (units: string) => `${units} short`,
    over: (units: string) => `${units} over`,
    formula:
      'Delivered + swapped in − swapped out − back to supplier = ' +
      'families + stalls + given away + lost + on the shelf.',
    money: 'Money',
    moneyRows: {
      families: 'Paid by families, less cheques that came back and refunds',
      stalls: 'Taken at stalls',
      online: 'Paid online to the supplier',
      gross: 'Gross handled',
      proceeds: 'Proceeds credited by the supplier',
      fees: 'less fees',
      losses: 'less goods and debts written off',
      gains: 'plus goods found and price rises',
      short: 'less short at stalls',
      over: 'plus over at stalls',
      net: 'Net kept',
      netLoss: 'Net loss so far',
      bank: 'In the bank account',
      overdrawn: 'Bank account overdrawn by',
      elsewhere: 'On its way there (goods, families, cash, cards, supplier)',
      owing: 'Still to go from there to the supplier and others',
    },
    signers: ['Season manager', 'Leader, not the treasurer'],
    signed: 'We have looked through this proof and the records behind it.',
  },
};

/** What a line of an account names, as texts. */
export interface LineTexts {
  readonly goods: string;
  readonly other: string;
  readonly tender: string;
}

export type Words = typeof wordsEn;
