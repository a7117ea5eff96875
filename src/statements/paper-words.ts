import type { AccountEvent, PartName } from '../questions/account-entries.ts';
import { onceEach } from '../words/once-each.ts';
import type { Say } from '../words/say.ts';
import { sentence } from './sentence.ts';

/**
 * Every word that a paper says; the papers themselves spell nothing out. Words of the trade only
 * (DESIGN 1); amounts and units come in as texts, direction is always in words.
 */
export const paperWords = onceEach((say) => ({
  pageOf: say`Page {page} of {pages}`,
  asAt: say`As at`,
  day: say`Day`,
  family: say`Family`,
  seller: say`Seller`,
  sellers: say`Sellers`,
  product: say`Product`,
  units: say`Units`,
  amount: say`Amount`,
  total: say`Total`,
  season: say`Season`,
  record: say.as('noun')`Record`,
  lastRecord: say`Last record`,
  none: say`none`,
  stillToPay: say`Still to pay`,
  /** Minor amounts as text; `owes` false means the family is in credit. */
  balance: (amount: string, owes: boolean) =>
    owes ? say`still to pay ${amount}` : say`in credit ${amount}`,
  signName: say`Name`,
  signature: say`Signature`,
  signDay: say`Day`,
  tenders: { cash: say`cash`, cheque: say`cheque`, card: say`card` },
  toGiveAway: (goods: string) => say`to give away ${goods}`,
  statement: statementWords(say),
  parts: partsWords(say),
  partsInMoney: partsInMoneyWords(say),
  events: eventsWords(say),
  reference: referenceWords(say),
  slip: slipWords(say),
  receipt: receiptWords(say),
  refund: refundWords(say),
  countSheet: countSheetWords(say),
  proof: proofWords(say),
  prizeOrder: prizeOrderWords(say),
  handOut: handOutWords(say),
  host: hostWords(say),
}));

function statementWords(say: Say) {
  return {
    title: (name: string) => say`Statement for ${name}`,
    titleOfAll: say`Statements`,
    everyLine: say`Every line`,
    what: say`What happened`,
    addsOrTakesOff: say`Adds +, takes off −`,
    stillToPay: say`Still to pay`,
    inCredit: (amount: string) => say`in credit ${amount}`,
    creditUnits: say`Credit units`,
    credit: (units: number) =>
      say.count(units)`Credit towards prizes: # unit. Credit is never money.|Credit towards prizes:
        # units. Credit is never money.`,
    creditNote: say`Credit units count towards prizes and are never money.`,
    noLines: say`Nothing has been written down for this family yet.`,
    ask: (name: string) =>
      say`Something not right, or a line you do not know? Ask ${name}, who is not the treasurer.`,
    askAnyone: say`Something not right? Ask a leader of the group who is not the treasurer.`,
  };
}

/** The parts of a sum inside a sentence; the first one starts with a capital. */
function partsWords(say: Say) {
  return {
    taken: (units: string) => say`taken ${units}`,
    received: (units: string) => say`received from others ${units}`,
    posted: (units: string) => say`posted to buyers ${units}`,
    gifts: (units: string) => say`gift units ${units}`,
    broughtBack: (units: string) => say`brought back ${units}`,
    passedOn: (units: string) => say`passed on ${units}`,
    paid: (_units: string, amount: string) => say`paid ${amount}`,
    bounced: (_units: string, amount: string) => say`cheque that came back ${amount}`,
    bankFees: (_units: string, amount: string) => say`bank fee ${amount}`,
    paidOnline: (_units: string, amount: string) => say`paid online by buyers ${amount}`,
    refunded: (_units: string, amount: string) => say`paid back to the family ${amount}`,
    givenUp: (_units: string, amount: string) => say`no longer asked for ${amount}`,
  } satisfies Record<PartName, (units: string, amount: string) => string>;
}

/** The same parts as a sum in money; the words say which way each one counts. */
function partsInMoneyWords(say: Say) {
  return {
    taken: say`Taken`,
    received: say`plus received from other sellers`,
    posted: say`plus posted to buyers`,
    gifts: say`plus gift units`,
    broughtBack: say`less brought back`,
    passedOn: say`less passed on to other sellers`,
    paid: say`less paid`,
    bounced: say`plus cheques that came back`,
    bankFees: say`plus bank fees for them`,
    paidOnline: say`less paid online by buyers`,
    refunded: say`plus paid back to the family`,
    givenUp: say`less no longer asked for`,
  } satisfies Record<PartName, string>;
}

/** What a line of an account says; goods, the other seller and tender come in as texts. */
function eventsWords(say: Say) {
  return {
    'goods-out': ({ goods }) => say`Goods out: ${goods}`,
    'goods-back': ({ goods }) => say`Goods back: ${goods}`,
    received: ({ goods, other }) => say`Received from ${other}: ${goods}`,
    'passed-on': ({ goods, other }) => say`Passed on to ${other}: ${goods}`,
    'posted-order': ({ goods }) => say`Posted to a buyer, paid online: ${goods}`,
    'online-order': ({ goods }) => say`Paid online, to be brought: ${goods}`,
    'gift-units': ({ goods }) => say`Gift units: ${goods}`,
    payment: ({ tender }) => say`Payment, ${tender}`,
    refund: ({ tender }) => say`Paid back, ${tender}`,
    'cheque-back': () => say`Cheque came back`,
    'given-up': () => say`No longer asked for`,
    'share-out': ({ goods }) => say`Credit shared out: ${goods}`,
  } satisfies Record<AccountEvent, (line: LineTexts) => string>;
}

function referenceWords(say: Say): Partial<Record<AccountEvent, string>> {
  return {
    'goods-out': say`slip`,
    payment: say`receipt`,
    'posted-order': say`order`,
    'online-order': say`order`,
    'gift-units': say`order`,
  };
}

function slipWords(say: Say) {
  return {
    titles: { handover: say`Goods out`, return: say`Goods back`, pass: say`Goods passed on` },
    number: say`Slip`,
    lead: {
      handover: (units: number, amount: string, seller: string) =>
        say.count(units)`${seller} takes over # unit at ${amount}.|${seller} takes over # units at
          ${amount}.`,
      return: (units: number, amount: string, seller: string) =>
        say.count(units)`${seller} brings back # unit at ${amount}.|${seller} brings back # units at
          ${amount}.`,
      pass: (units: number, amount: string, seller: string, to: string) =>
        sentence(
          say.count(units)`${seller} passes # unit at ${amount} on to ${to}|${seller} passes
          # units at ${amount} on to ${to}`,
          say,
        ),
    },
    terms: {
      handover: say`From now on the family owes the price of these goods, or brings them back.`,
      return: say`From now on the family no longer owes the price of these goods.`,
      pass: say`From now on the price of these goods, and their credit, go with them.`,
    },
    cases: say`Cases`,
    singles: say`Singles`,
    unitPrice: say`Price`,
    caution: say`Cases are heavy: lift with two, and load away from traffic.`,
    signers: {
      handover: [say`Handed over by`, say`Taken over by`],
      return: [say`Brought back by`, say`Taken back by`],
      pass: [say`Passed on by`, say`Taken over by`],
    },
  };
}

function receiptWords(say: Say) {
  return {
    title: (number: string) => say`Receipt ${number}`,
    titleBare: say`Receipt`,
    number: say`Receipt number`,
    noNumber: say`none given`,
    lead: (amount: string, tender: string, name: string) =>
      sentence(say`Received ${amount} ${tender} from ${name}`, say),
    tenders: { cash: say`in cash`, cheque: say`by cheque`, card: say`by card` },
    paidBy: say`Received from`,
    after: say`After this payment`,
    cheque: say`A cheque counts as paid once the bank has cleared it.`,
    keep: say`Keep this receipt until the season is closed.`,
    signer: say`Received by`,
  };
}

function refundWords(say: Say) {
  return {
    title: say`Refund receipt`,
    lead: (amount: string, tender: string, name: string) =>
      sentence(say`Paid back ${amount} ${tender} to ${name}`, say),
    paidTo: say`Paid back to`,
    after: say`After this refund`,
    keep: say`One copy stays with the group, one with the family, until the season is closed.`,
    signers: [say`Paid back by`, say`Received by`],
  };
}

function countSheetWords(say: Say) {
  return {
    title: say`Count sheet`,
    place: say`Place`,
    stockroom: say`Stockroom`,
    shelf: say`Kept at`,
    caseOf: say`Case of`,
    cases: say`Full cases`,
    singles: say`Singles`,
    lead: say`Count what is there. Write 0 where there is none.`,
    how: say`Two people count, each on a sheet of their own, and compare when both are done. A case
        that is open counts as singles.`,
    caution: say`Use a step for high shelves and lift heavy cases with two.`,
    counters: [say`First counter`, say`Second counter`],
  };
}

function proofWords(say: Say) {
  return {
    title: say`Season proof`,
    agrees: (units: number) =>
      say.count(units)`# unit to account for, and all of them are accounted for.|# units to account
        for, and all of them are accounted for.`,
    differs: (units: number, products: string) =>
      sentence(
        say.count(units)`# unit to account for. Not agreeing yet: ${products}|# units to
        account for. Not agreeing yet: ${products}`,
        say,
      ),
    cameIn: say`What came in (units)`,
    places: say`Where it is (units)`,
    delivered: say`Delivered`,
    swappedIn: say`Swapped in`,
    swappedOut: say`Swapped out`,
    broughtBack: say`Back to supplier`,
    toAccountFor: say`To account for`,
    families: say`Families`,
    stalls: say`Stalls`,
    given: say`Given away`,
    lost: say`Lost`,
    shelf: say`On the shelf`,
    accountedFor: say`Accounted for`,
    difference: say`Difference`,
    agree: say`agrees`,
    short: (units: string) => say`${units} short`,
    over: (units: string) => say`${units} over`,
    formula: say`Delivered + swapped in − swapped out − back to supplier = families + stalls + given
      away + lost + on the shelf.`,
    money: say`Money`,
    moneyRows: moneyRowWords(say),
    signers: [say`Season manager`, say`Leader, not the treasurer`],
    signed: say`We have looked through this proof and the records behind it.`,
  };
}

function moneyRowWords(say: Say) {
  return {
    families: say`Paid by families, less cheques that came back and refunds`,
    stalls: say`Taken at stalls`,
    online: say`Paid online to the supplier`,
    gross: say`Gross handled`,
    proceeds: say`Proceeds credited by the supplier`,
    fees: say`less fees`,
    losses: say`less goods and debts written off`,
    gains: say`plus goods found and price rises`,
    short: say`less short at stalls`,
    over: say`plus over at stalls`,
    net: say`Net kept`,
    netLoss: say`Net loss so far`,
    bank: say`In the bank account`,
    overdrawn: say`Bank account overdrawn by`,
    elsewhere: say`On its way there (goods, families, cash, cards, supplier)`,
    owing: say`Still to go from there to the supplier and others`,
  };
}

function prizeOrderWords(say: Say) {
  return {
    title: say`Prizes to order`,
    lead: (pieces: number) => say.count(pieces)`# piece to order.|# pieces to order.`,
    nothing: say`Nothing to order yet.`,
    waits: (choices: string) => say`Choices still missing: ${choices}.`,
    notShared: (units: number) =>
      say.count(units)`# unit is not yet shared: steps may change.|# units are not yet shared: steps
        may change.`,
    confirmed: say`Only confirmed credit is in this order. Credit is never money.`,
    prize: say`Prize`,
    choice: say`Choice`,
    pieces: say`Pieces`,
    came: say`Came`,
  };
}

function handOutWords(say: Say) {
  return {
    title: say`Hand-out list`,
    lead: (prizes: number, sellers: number) => say`Prizes: ${prizes}. Sellers: ${sellers}.`,
    how: say`Tick when a prize is handed over, to an adult of the family. Keep this list with the
        season’s papers, and off notice boards.`,
    handedOut: say`Handed out`,
    day: say`Day`,
    choiceMissing: say`choice missing`,
    decide: say`For a leader to decide`,
    decideWhy: say`Chosen, but the credit is not there: not yet, or no more. What is ordered
      stays.`,
    signer: say`Handed out by`,
  };
}

function hostWords(say: Say) {
  return {
    title: (name: string) => say`Stalls at ${name}`,
    lead: (stalls: number, hours: string, units: number, value: string) => {
      const sold = say.count(units)`# unit sold for ${value}|# units sold for ${value}`;
      return say.count(stalls)`# stall, ${hours}: ${sold}.|# stalls, ${hours}: ${sold}.`;
    },
    thanks: say`With thanks for having us. Prices are those of each day.`,
    stalls: say`Stalls`,
    stall: say`Day and time`,
    open: say`Open`,
    units: say`Units`,
    value: say`Value`,
    notCounted: say`not counted`,
    products: say`Sold, by product`,
  };
}

/** What a line of an account names, as texts. */
export interface LineTexts {
  readonly goods: string;
  readonly other: string;
  readonly tender: string;
}

export type PaperWords = ReturnType<typeof paperWords>;
