import type { Draft } from '../draft.ts';
import { say } from '../say.ts';
import { doubledPayment, MADE_UP_TODAY } from './made-up-records.ts';
import type { Task } from './topic-at.ts';

/**
 * Help for each main task, all of it here: three sentences, and an example on the made-up book. The
 * figures of an example are not written down: the ledger works them out from the draft.
 */
export interface Topic {
  readonly says: readonly [string, string, string];
  readonly example: Draft;
  /** The page of the made-up book that opens with the example filled in. */
  readonly opens: string;
}

const date = MADE_UP_TODAY;

export const topics: Readonly<Record<Task, Topic>> = {
  delivery: {
    says: [
      say`Count the goods while the driver is still there.`,
      say`Write what was counted, and what the slip had that was not there.`,
      say`The stockroom grows, and so does what the group owes the supplier.`,
    ],
    example: { kind: 'delivery', date, lines: { honey: 12, jam: 6 }, slip: 'L-102' },
    opens: '/add/delivery?lines.honey=12&lines.jam=6&slip=L-102',
  },
  handover: {
    says: [
      say`A family signs for the goods it takes.`,
      say`From then on it owes their price, and the seller has the credit.`,
      say`Cases may be typed as well as singles.`,
    ],
    example: { kind: 'handover', date, seller: 'ada', lines: { honey: 5 } },
    opens: '/add/handover?seller=ada&lines.honey=5',
  },
  return: {
    says: [
      say`Look at what comes back: only whole goods go on the shelf again.`,
      say`The family then owes less, and the seller has less credit.`,
      say`Damaged goods are a loss or an exchange, not goods back.`,
    ],
    example: { kind: 'return', date, seller: 'ada', lines: { jam: 2 } },
    opens: '/add/return?seller=ada&lines.jam=2',
  },
  payment: {
    says: [
      say`Count the money with the family there and give a receipt.`,
      say`The amount still to pay is offered, and any other may be typed.`,
      say`Cash and cheques wait in the cash box until they go to the bank.`,
    ],
    example: { kind: 'payment', date, seller: 'ada', tender: 'cash', cents: 3100 },
    opens: '/add/payment?seller=ada&cents=3100&tender=cash',
  },
  count: {
    says: [
      say`Two adults count the shelf before they see what the book says.`,
      say`The count changes nothing: it states a fact beside the book.`,
      say`Where the two differ, count again first, then ask why.`,
    ],
    example: { kind: 'count', date, lines: { honey: 19, jam: 15 } },
    opens: '/count',
  },
  stall: {
    says: [
      say`Write what went out, what came back, and the money in the box.`,
      say`Out less back is sold, and sold times the price is what should be there.`,
      say`A stall that is short or over is saved as it is.`,
    ],
    example: {
      kind: 'stall-close',
      date,
      stall: 'quay-0313',
      out: { honey: 10, jam: 6 },
      back: { honey: 3, jam: 1 },
      float: 2000,
      cash: 6500,
      cards: 4000,
      cheques: 0,
    },
    opens:
      '/add/stall-close?stall=quay-0313&out.honey=10&out.jam=6&back.honey=3&back.jam=1' +
      '&float=2000&cash=6500&cards=4000&cheques=0',
  },
  'share-out': {
    says: [
      say`What a stall sold is credit in a pool until it is shared.`,
      say`Each seller gets whole units, by the time worked or evenly.`,
      say`Cells that you set by hand stay, and the rest is shared around them.`,
    ],
    example: {
      kind: 'shareout',
      date,
      pool: 'stall:quay-0306',
      lines: { ada: { honey: 4, jam: 2 }, ben: { honey: 3, jam: 3 } },
    },
    opens: '/stalls/quay-0306',
  },
  deposit: {
    says: [
      say`Two adults count the cash box and take it to the bank.`,
      say`Write the amount on the slip, and tick the receipts in it.`,
      say`Until the bank shows it, it counts as not yet safe.`,
    ],
    example: { kind: 'deposit', date, cents: 4850, slip: 'D-2' },
    opens: '/add/deposit?cents=4850&slip=D-2',
  },
  online: {
    says: [
      say`A buyer has paid the supplier for goods from this seller.`,
      say`Posted goods come from the supplier, the others are brought by the seller.`,
      say`What was paid counts for the family, so it owes less.`,
    ],
    example: {
      kind: 'online',
      date,
      order: 'W-7',
      seller: 'ada',
      lines: { jam: 2 },
      paid: 1300,
      sent: 'hand',
    },
    opens: '/add/online?order=W-7&seller=ada&lines.jam=2&paid=1300&sent=hand',
  },
  gift: {
    says: [
      say`Somebody paid for goods that are to be given away.`,
      say`Record them once they are given, and from whose stock.`,
      say`The seller has the credit, and their price is owed like any other.`,
    ],
    example: { kind: 'gift', date, seller: 'ada', lines: { honey: 1 }, from: 'stockroom' },
    opens: '/add/gift?seller=ada&lines.honey=1&from=stockroom',
  },
  bank: {
    says: [
      say`Choose the file that the bank gives you for its statement.`,
      say`Each of its lines is set beside the record it belongs to.`,
      say`A line without a record is one to add, like a fee.`,
    ],
    example: { kind: 'bank-fee', date, cents: 350 },
    opens: '/add/bank-fee?cents=350',
  },
  debits: {
    says: [
      say`The supplier takes what it is owed on days told before.`,
      say`The page shows what the account will hold that morning.`,
      say`Where it is too little, it names the last day on which cash helps.`,
    ],
    example: { kind: 'debit', date: '2027-03-19', cents: 5000, announced: 5000 },
    opens: '/match/debits',
  },
  prizes: {
    says: [
      say`Credit earns prizes step by step.`,
      say`Where a step offers a choice, write what the seller wants.`,
      say`The order list counts what has been chosen.`,
    ],
    example: { kind: 'choice', seller: 'ada', level: 'mug', choice: say`blue` },
    opens: '/prizes',
  },
  why: {
    says: [
      say`Say what you saw: on the shelf, in the box, on a statement.`,
      say`The page lists what most likely went wrong, the likeliest first.`,
      say`Nothing is changed before you take one, and it can be undone.`,
    ],
    example: { kind: 'void', voids: doubledPayment, reason: say`Keyed twice` },
    opens: '/why?about=cashbox&cashbox=4850',
  },
  closing: {
    says: [
      say`Go through the list from the top, one open line at a time.`,
      say`Each line says what is left, why, and what to do next.`,
      say`When nothing is open, two people close the season.`,
    ],
    example: { kind: 'swap-out', date, neighbour: 'millbrook', lines: { honey: 4 } },
    opens: '/closing',
  },
};
