import type { Ledger } from '../ledger/ledger.ts';
import { priceOfLines, soldAtStall, takingsAtStall } from '../ledger/posting.ts';
import type { Setup } from '../ledger/setup.ts';
import type { Lines } from '../records/fields.ts';
import { NO_PRIZE } from '../records/no-prize.ts';
import type { BookRecord, Kind, RecordOf } from '../records/record.ts';
import { productName, sellerName, stallName } from './account-name.ts';
import { dayText } from './day-text.ts';
import { moneyText, unitsText } from './money-text.ts';

/**
 * A record as one sentence with names and amounts: "Goods out to Ada L.: 5 Wildflower honey, 2 Plum
 * jam; 7 units, $56.00". It starts with the record's kind in the group's own words, so that a list
 * of them can be scanned, and says no date, which stands beside it.
 */
export function recordSentence(record: BookRecord, ledger: Ledger): string {
  // The table pairs each kind with its own record type, which the compiler cannot follow here.
  const say = sentences[record.kind] as Say<Kind>;
  return say(record, new Telling(ledger, 'date' in record ? record.date : ''));
}

type Say<K extends Kind> = (record: RecordOf<K>, tell: Telling) => string;

/** Products named one by one in a sentence before the rest is only counted. */
const PRODUCTS_NAMED_MAX = 3;

/** Turns ids and numbers of one record into words. */
class Telling {
  readonly #ledger: Ledger;
  /** The day of a movement; set-up records price no goods. */
  readonly #day: string;

  constructor(ledger: Ledger, day: string) {
    this.#ledger = ledger;
    this.#day = day;
  }

  get setup(): Setup {
    return this.#ledger.setup;
  }

  seller(id: string | undefined): string {
    return id === undefined ? 'nobody named' : sellerName(this.setup, id);
  }

  money(minor: number): string {
    return moneyText(minor, this.setup.season?.currency ?? '');
  }

  /**
   * `5 Wildflower honey, 2 Plum jam`; where there are more than three, `24 units of 5 products`.
   */
  goods(lines: Lines): string {
    const named = Object.keys(lines).filter((product) => (lines[product] ?? 0) !== 0);
    if (named.length === 0) return 'no goods';
    if (named.length > PRODUCTS_NAMED_MAX) {
      return `${this.units(lines)} of ${named.length} products`;
    }
    return named
      .map((product) => `${unitsText(lines[product] ?? 0)} ${productName(this.setup, product)}`)
      .join(', ');
  }

  /** `5 Plum jam and 2 Mint tea to give away`; either may be missing. */
  goodsAndGifts(lines: Lines, gifts: Lines = {}): string {
    const given = `${this.goods(gifts)} to give away`;
    if (Object.keys(gifts).length === 0) return this.goods(lines);
    return Object.keys(lines).length === 0 ? given : `${this.goods(lines)} and ${given}`;
  }

  units(lines: Lines): string {
    let units = 0;
    for (const product in lines) units += lines[product] ?? 0;
    return `${unitsText(units)} ${units === 1 ? 'unit' : 'units'}`;
  }

  value(lines: Lines): string {
    return this.money(priceOfLines(lines, this.#day, this.#ledger));
  }

  /** Goods with their price: `5 Wildflower honey, $40.00`. */
  priced(lines: Lines): string {
    return `${this.goods(lines)}, ${this.value(lines)}`;
  }

  /** What a removal removed; undefined where the id names no removal. */
  removedBy(id: string): string | undefined {
    const record = this.#ledger.standing.get(id);
    return record?.kind === 'void' ? record.voids : undefined;
  }

  another(id: string): string {
    const record = this.#ledger.standing.get(id);
    if (record === undefined) return 'a record that is not here yet';
    const sentence = recordSentence(record, this.#ledger);
    return 'date' in record ? `${sentence} (${dayText(record.date)})` : sentence;
  }
}

const TENDERS = { cash: 'in cash', cheque: 'by cheque', card: 'by card' } as const;
const POOLS: Readonly<Record<string, string>> = { post: 'posted orders', gift: 'gift units' };

const sentences: { readonly [K in Kind]: Say<K> } = {
  season: (r) =>
    r.closed
      ? `Season ${r.name} closed on ${dayText(r.closed.date)}`
      : `Season ${r.name}: ${dayText(r.starts)} to ${dayText(r.ends)}, ${r.currency}`,
  product: (r, tell) =>
    `Product ${r.name}: ${tell.money(r.price)} a unit, case of ${r.case}` +
    `${r.from ? `, from ${dayText(r.from)}` : ''}${r.retired ? ', retired' : ''}`,
  hold: (r, tell) =>
    `${r.lifted ? 'Stop-sale lifted' : 'Stop-sale'} of ${productName(tell.setup, r.product)}` +
    `${r.lot ? `, lot ${r.lot}` : ''}: ${r.reason}`,
  family: (r) => `Family ${r.name}`,
  seller: (r, tell) =>
    `Seller ${r.name}, family ${tell.setup.families.get(r.family)?.name ?? r.family}` +
    `${r.goal ? `, goal ${unitsText(r.goal)} units` : ''}` +
    `${r.active ? '' : ', not selling any more'}`,
  host: (r) => `Host shop ${r.name}`,
  neighbour: (r) => `Neighbour group ${r.name}`,
  stall: (r, tell) =>
    `Stall at ${tell.setup.hosts.get(r.host)?.name ?? r.host}, ${dayText(r.starts.slice(0, 10))} ` +
    `${r.starts.slice(11)} to ${r.ends.slice(11)}`,
  level: (r) => `Prize step at ${unitsText(r.units)} units: ${r.prize}`,
  choice: (r, tell) =>
    `Prize choice of ${tell.seller(r.seller)}: ` +
    `${r.choice === NO_PRIZE ? 'no prize' : r.choice} ` +
    `(${tell.setup.levels.get(r.level)?.prize ?? r.level})`,
  proceeds: (r, tell) =>
    `Proceeds: ${proceedsSteps(r, tell)} units` +
    `${r.waiver ? `, ${tell.money(r.waiver.cents)} more without prizes` : ''}`,
  order: (r, tell) =>
    `Family order of ${tell.seller(r.seller)}: ${tell.priced(r.lines)}` +
    `${r.gifts ? `, and ${tell.goods(r.gifts)} to give away` : ''}`,
  'supply-order': (r, tell) => `Order to the supplier: ${tell.priced(r.lines)}`,
  delivery: (r, tell) => `Delivery: ${tell.priced(r.lines)}${r.slip ? `, slip ${r.slip}` : ''}`,
  'swap-in': (r, tell) => `Swap in from ${neighbour(r.neighbour, tell)}: ${tell.priced(r.lines)}`,
  'swap-out': (r, tell) => `Swap out to ${neighbour(r.neighbour, tell)}: ${tell.priced(r.lines)}`,
  exchange: (r, tell) => `Exchange with the supplier, one for one: ${tell.goods(r.lines)}`,
  handover: (r, tell) => `Goods out to ${tell.seller(r.seller)}: ${tell.priced(r.lines)}`,
  return: (r, tell) => `Goods back from ${tell.seller(r.seller)}: ${tell.priced(r.lines)}`,
  pass: (r, tell) =>
    `Pass on from ${tell.seller(r.from)} to ${tell.seller(r.to)}: ${tell.priced(r.lines)}`,
  online: (r, tell) =>
    `Online order ${r.order}${r.seller ? ` for ${tell.seller(r.seller)}` : ''}: ` +
    `${tell.goodsAndGifts(r.lines, r.gifts)}, ` +
    `${tell.money(r.paid)} paid, ${r.sent === 'post' ? 'posted' : 'brought by hand'}`,
  gift: (r, tell) =>
    `Gift units${r.seller ? ` of ${tell.seller(r.seller)}` : ''} ` +
    `${r.from === 'supplier' ? 'given on by the supplier' : 'out of the stockroom'}: ` +
    tell.priced(r.lines),
  'stall-close': (r, tell) =>
    `Stall settled, ${stallName(tell.setup, r.stall)}: ${tell.units(soldAtStall(r))} sold, ` +
    `${tell.value(soldAtStall(r))}; takings ${tell.money(takingsAtStall(r))}`,
  shareout: (r, tell) => {
    const pool = POOLS[r.pool] ?? stallName(tell.setup, r.pool.slice('stall:'.length));
    const shared = Object.values(r.lines).flatMap((lines) => Object.entries(lines));
    const byPlace = Object.fromEntries(shared.map(([, units], place) => [String(place), units]));
    const sellers = Object.keys(r.lines).length;
    return `Share-out of ${pool}: ${tell.units(byPlace)} to ${sellers} sellers`;
  },
  payment: (r, tell) =>
    `Payment from ${tell.seller(r.seller)}: ${tell.money(r.cents)} ${TENDERS[r.tender]}` +
    `${r.receipt ? `, receipt ${r.receipt}` : ''}`,
  refund: (r, tell) =>
    `Refund to ${tell.seller(r.seller)}: ${tell.money(r.cents)} ${TENDERS[r.tender]}`,
  deposit: (r, tell) =>
    `Deposit at the bank: ${tell.money(r.cents)}${r.slip ? `, slip ${r.slip}` : ''}`,
  'card-settle': (r, tell) =>
    `Card payout: ${tell.money(r.cents)} to the ${r.to}` +
    `${r.fee ? `, fee ${tell.money(r.fee)}` : ''}`,
  debit: (r, tell) =>
    `Debit by the supplier: ${tell.money(r.cents)}` +
    `${r.announced === undefined ? '' : `, announced ${tell.money(r.announced)}`}`,
  'debit-returned': (r, tell) =>
    `Returned debit: ${tell.another(r.debit)}${r.fee ? `; fee ${tell.money(r.fee)}` : ''}`,
  'bank-fee': (r, tell) => `Bank fee: ${tell.money(r.cents)}`,
  bounced: (r, tell) =>
    `Bounced cheque: ${tell.another(r.payment)}` +
    `${r.fee ? `; fee ${tell.money(r.fee)}${r.charge ? ', charged to the family' : ''}` : ''}`,
  loss: (r, tell) =>
    r.lines
      ? `Write-off of ${tell.priced(r.lines)}: ${r.reason}`
      : `Write-off of ${tell.money(r.cents ?? 0)} that ${tell.seller(r.seller)} ` +
        `had still to pay: ${r.reason}`,
  found: (r, tell) => `Found in the stockroom: ${tell.priced(r.lines)}: ${r.reason}`,
  count: (r, tell) =>
    r.sheet !== undefined
      ? `Stall sheet, ${stallName(tell.setup, r.sheet.stall)}: ` +
        `${unitsText(r.sheet.entries.length)} lines`
      : `Count of the stockroom: ${tell.units(r.lines)}` +
        `${r.counters ? `, by ${r.counters.join(' and ')}` : ''}`,
  settle: (r, tell) => `Proceeds credited by the supplier: ${tell.money(r.proceeds)}`,
  void: (r, tell) => {
    const back = tell.removedBy(r.voids);
    if (back !== undefined) return `Removal taken back: ${tell.another(back)}`;
    return `Removed: ${tell.another(r.voids)}. Reason: ${r.reason}`;
  },
};

function proceedsSteps({ steps }: RecordOf<'proceeds'>, tell: Telling): string {
  const told = steps.map((step) => `${tell.money(step.cents)} from ${unitsText(step.from)}`);
  return told.join(', ');
}

function neighbour(id: string, tell: Telling): string {
  return tell.setup.neighbours.get(id)?.name ?? id;
}
