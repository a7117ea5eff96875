import type { Ledger } from '../ledger/ledger.ts';
import { priceOfLines, soldAtStall, takingsAtStall } from '../ledger/posting.ts';
import type { Setup } from '../ledger/setup.ts';
import type { Lines } from '../records/fields.ts';
import { NO_PRIZE } from '../records/no-prize.ts';
import type { BookRecord, Kind, RecordOf } from '../records/record.ts';
import type { Say } from '../words/say.ts';
import { productName, sellerName, stallName } from './account-name.ts';
import { joined } from './joined.ts';

/**
 * A record as one sentence with names and amounts: "Goods out to Ada L.: 5 Wildflower honey, 2 Plum
 * jam; 7 units, $56.00". It starts with the record's kind in the group's own words, so that a list
 * of them can be scanned, and says no date, which stands beside it.
 */
export function recordSentence(record: BookRecord, ledger: Ledger, say: Say): string {
  // The table pairs each kind with its own record type, which the compiler cannot follow here.
  const tell = sentences[record.kind] as Tell<Kind>;
  return tell(record, new Telling(ledger, 'date' in record ? record.date : '', say), say);
}

type Tell<K extends Kind> = (record: RecordOf<K>, tell: Telling, say: Say) => string;

/** Products named one by one in a sentence before the rest is only counted. */
const PRODUCTS_NAMED_MAX = 3;

/** Turns ids and numbers of one record into words. */
class Telling {
  readonly #ledger: Ledger;
  /** The day of a movement; set-up records price no goods. */
  readonly #day: string;
  readonly #say: Say;

  constructor(ledger: Ledger, day: string, say: Say) {
    this.#ledger = ledger;
    this.#day = day;
    this.#say = say;
  }

  get setup(): Setup {
    return this.#ledger.setup;
  }

  seller(id: string): string {
    return sellerName(this.setup, id);
  }

  stall(id: string): string {
    return stallName(this.setup, id, this.#say);
  }

  neighbour(id: string): string {
    return this.setup.neighbours.get(id)?.name ?? id;
  }

  money(minor: number): string {
    return this.#say.money(minor, this.setup.season?.currency ?? '');
  }

  /**
   * `5 Wildflower honey, 2 Plum jam`; where there are more than three, `24 units of 5 products`.
   */
  goods(lines: Lines): string {
    const say = this.#say;
    const named = Object.keys(lines).filter((product) => (lines[product] ?? 0) !== 0);
    if (named.length === 0) return say`no goods`;
    if (named.length > PRODUCTS_NAMED_MAX) {
      return say`${this.units(lines)} of ${named.length} products`;
    }
    return joined(
      named.map(
        (product) => say.as('goods')`${lines[product] ?? 0} ${productName(this.setup, product)}`,
      ),
      say,
    );
  }

  /** `5 Plum jam and 2 Mint tea to give away`; either may be missing. */
  goodsAndGifts(lines: Lines, gifts: Lines = {}): string {
    const say = this.#say;
    if (Object.keys(gifts).length === 0) return this.goods(lines);
    const given = say`${this.goods(gifts)} to give away`;
    return Object.keys(lines).length === 0 ? given : say`${this.goods(lines)} and ${given}`;
  }

  units(lines: Lines): string {
    let units = 0;
    for (const product in lines) units += lines[product] ?? 0;
    return this.#say.count(units)`# unit|# units`;
  }

  value(lines: Lines): string {
    return this.money(priceOfLines(lines, this.#day, this.#ledger));
  }

  /** Goods with their price: `5 Wildflower honey, $40.00`. */
  priced(lines: Lines): string {
    return joined([this.goods(lines), this.value(lines)], this.#say);
  }

  /** What a removal removed; undefined where the id names no removal. */
  removedBy(id: string): string | undefined {
    const record = this.#ledger.standing.get(id);
    return record?.kind === 'void' ? record.voids : undefined;
  }

  another(id: string): string {
    const say = this.#say;
    const record = this.#ledger.standing.get(id);
    if (record === undefined) return say`a record that is not here yet`;
    const sentence = recordSentence(record, this.#ledger, say);
    return 'date' in record ? say`${sentence} (${say.day(record.date)})` : sentence;
  }

  slip(slip: string | undefined): string {
    return slip === undefined ? '' : this.#say`slip ${slip}`;
  }

  fee(fee: number | undefined): string {
    return fee ? this.#say`fee ${this.money(fee)}` : '';
  }

  /** `$40.00 in cash`. */
  paid(cents: number, tender: 'cash' | 'cheque' | 'card'): string {
    const say = this.#say;
    const amount = this.money(cents);
    if (tender === 'cash') return say`${amount} in cash`;
    return tender === 'cheque' ? say`${amount} by cheque` : say`${amount} by card`;
  }
}

const sentences: { readonly [K in Kind]: Tell<K> } = {
  season: (r, _, say) =>
    r.closed
      ? say`Season ${r.name} closed on ${say.day(r.closed.date)}`
      : say`Season ${r.name}: ${say.day(r.starts)} to ${say.day(r.ends)}, ${r.currency}`,
  product: (r, tell, say) => {
    const facts = [
      say`${tell.money(r.price)} a unit`,
      say`case of ${r.case}`,
      r.from ? say`from ${say.day(r.from)}` : '',
      r.retired ? say`retired` : '',
    ];
    return say`Product ${r.name}: ${joined(facts, say)}`;
  },
  hold: (r, tell, say) => {
    const product = productName(tell.setup, r.product);
    const what = joined([product, r.lot ? say`lot ${r.lot}` : ''], say);
    return r.lifted
      ? say`Stop-sale lifted of ${what}: ${r.reason}`
      : say`Stop-sale of ${what}: ${r.reason}`;
  },
  family: (r, _, say) => say`Family ${r.name}`,
  seller: (r, tell, say) => {
    const facts = [
      say`Seller ${r.name}`,
      say`family ${tell.setup.families.get(r.family)?.name ?? r.family}`,
      r.goal ? say.count(r.goal)`goal # unit|goal # units` : '',
      r.active ? '' : say`not selling any more`,
    ];
    return joined(facts, say);
  },
  host: (r, _, say) => say`Host shop ${r.name}`,
  neighbour: (r, _, say) => say`Neighbour group ${r.name}`,
  stall: (r, tell, say) => {
    const host = tell.setup.hosts.get(r.host)?.name ?? r.host;
    const [day, from, to] = [r.starts.slice(0, 10), r.starts.slice(11), r.ends.slice(11)];
    return say`Stall at ${host}, ${say.day(day)} ${from} to ${to}`;
  },
  level: (r, _, say) => say.count(r.units)`Prize step at # unit: ${r.prize}|Prize step at # units:
    ${r.prize}`,
  choice: (r, tell, say) => {
    const choice = r.choice === NO_PRIZE ? say`no prize` : r.choice;
    const prize = tell.setup.levels.get(r.level)?.prize ?? r.level;
    return say`Prize choice of ${tell.seller(r.seller)}: ${choice} (${prize})`;
  },
  proceeds: (r, tell, say) => {
    const steps = r.steps.map(
      (step) =>
        say.count(step.from)`${tell.money(step.cents)} from # unit|${tell.money(step.cents)} from #
        units`,
    );
    const waiver = r.waiver ? say`${tell.money(r.waiver.cents)} more without prizes` : '';
    return say`Proceeds: ${joined([...steps, waiver], say)}`;
  },
  order: (r, tell, say) => {
    const goods = tell.priced(r.lines);
    const said = r.gifts ? say`${goods}, and ${tell.goods(r.gifts)} to give away` : goods;
    return say`Family order of ${tell.seller(r.seller)}: ${said}`;
  },
  'supply-order': (r, tell, say) => say`Order to the supplier: ${tell.priced(r.lines)}`,
  delivery: (r, tell, say) =>
    say`Delivery: ${joined([tell.priced(r.lines), tell.slip(r.slip)], say)}`,
  'swap-in': (r, tell, say) =>
    say`Swap in from ${tell.neighbour(r.neighbour)}: ${tell.priced(r.lines)}`,
  'swap-out': (r, tell, say) =>
    tell.setup.neighbours.get(r.neighbour)?.supplier === true
      ? say`Brought back to ${tell.neighbour(r.neighbour)}: ${tell.priced(r.lines)}`
      : say`Swap out to ${tell.neighbour(r.neighbour)}: ${tell.priced(r.lines)}`,
  exchange: (r, tell, say) => say`Exchange with the supplier, one for one: ${tell.goods(r.lines)}`,
  handover: (r, tell, say) => say`Goods out to ${tell.seller(r.seller)}: ${tell.priced(r.lines)}`,
  return: (r, tell, say) => say`Goods back from ${tell.seller(r.seller)}: ${tell.priced(r.lines)}`,
  pass: (r, tell, say) =>
    say`Pass on from ${tell.seller(r.from)} to ${tell.seller(r.to)}: ${tell.priced(r.lines)}`,
  online: (r, tell, say) => {
    const facts = joined(
      [
        tell.goodsAndGifts(r.lines, r.gifts),
        say`${tell.money(r.paid)} paid`,
        r.sent === 'post' ? say`posted` : say`brought by hand`,
      ],
      say,
    );
    return r.seller
      ? say`Online order ${r.order} for ${tell.seller(r.seller)}: ${facts}`
      : say`Online order ${r.order}: ${facts}`;
  },
  gift: (r, tell, say) => {
    const goods = tell.priced(r.lines);
    const seller = r.seller ? tell.seller(r.seller) : undefined;
    if (r.from === 'supplier') {
      return seller === undefined
        ? say`Gift units given on by the supplier: ${goods}`
        : say`Gift units of ${seller} given on by the supplier: ${goods}`;
    }
    return seller === undefined
      ? say`Gift units out of the stockroom: ${goods}`
      : say`Gift units of ${seller} out of the stockroom: ${goods}`;
  },
  'stall-close': (r, tell, say) =>
    say`Stall settled, ${tell.stall(r.stall)}: ${tell.units(soldAtStall(r))} sold,
      ${tell.value(soldAtStall(r))}; takings ${tell.money(takingsAtStall(r))}`,
  shareout: (r, tell, say) => {
    const shared = Object.values(r.lines).flatMap((lines) => Object.entries(lines));
    const byPlace = Object.fromEntries(shared.map(([, units], place) => [String(place), units]));
    const sellers = say.count(Object.keys(r.lines).length)`# seller|# sellers`;
    return say`Share-out of ${pooled(r.pool, tell, say)}: ${tell.units(byPlace)} to ${sellers}`;
  },
  payment: (r, tell, say) => {
    const receipt = r.receipt ? say`receipt ${r.receipt}` : '';
    const facts = joined([tell.paid(r.cents, r.tender), receipt], say);
    return say`Payment from ${tell.seller(r.seller)}: ${facts}`;
  },
  refund: (r, tell, say) =>
    say`Refund to ${tell.seller(r.seller)}: ${tell.paid(r.cents, r.tender)}`,
  deposit: (r, tell, say) =>
    say`Deposit at the bank: ${joined([tell.money(r.cents), tell.slip(r.slip)], say)}`,
  'card-settle': (r, tell, say) => {
    const amount = tell.money(r.cents);
    const to = r.to === 'bank' ? say`${amount} to the bank` : say`${amount} to the supplier`;
    return say`Card payout: ${joined([to, tell.fee(r.fee)], say)}`;
  },
  debit: (r, tell, say) => {
    const said = r.announced === undefined ? '' : say`announced ${tell.money(r.announced)}`;
    return say`Debit by the supplier: ${joined([tell.money(r.cents), said], say)}`;
  },
  'debit-returned': (r, tell, say) =>
    say`Returned debit: ${[tell.another(r.debit), tell.fee(r.fee)].filter(Boolean).join(say`; `)}`,
  'bank-fee': (r, tell, say) => say`Bank fee: ${tell.money(r.cents)}`,
  bounced: (r, tell, say) => {
    const fee = joined([tell.fee(r.fee), r.fee && r.charge ? say`charged to the family` : ''], say);
    return say`Bounced cheque: ${[tell.another(r.payment), fee].filter(Boolean).join(say`; `)}`;
  },
  loss: (r, tell, say) => {
    if (r.lines) return say`Write-off of ${tell.priced(r.lines)}: ${r.reason}`;
    const seller = r.seller === undefined ? say`nobody named` : tell.seller(r.seller);
    return say`Write-off of ${tell.money(r.cents ?? 0)} that ${seller} had still to pay:
      ${r.reason}`;
  },
  found: (r, tell, say) => say`Found in the stockroom: ${tell.priced(r.lines)}: ${r.reason}`,
  count: (r, tell, say) => {
    if (r.sheet !== undefined) {
      const [stall, lines] = [tell.stall(r.sheet.stall), r.sheet.entries.length];
      return say.count(lines)`Stall sheet, ${stall}: # line|Stall sheet, ${stall}: # lines`;
    }
    const by = r.counters ? say`by ${say.list(r.counters)}` : '';
    return say`Count of the stockroom: ${joined([tell.units(r.lines), by], say)}`;
  },
  settle: (r, tell, say) => say`Proceeds credited by the supplier: ${tell.money(r.proceeds)}`,
  void: (r, tell, say) => {
    const back = tell.removedBy(r.voids);
    if (back !== undefined) return say`Removal taken back: ${tell.another(back)}`;
    return say`Removed: ${tell.another(r.voids)}. Reason: ${r.reason}`;
  },
};

function pooled(pool: string, tell: Telling, say: Say): string {
  if (pool === 'post') return say`posted orders`;
  return pool === 'gift' ? say`gift units` : tell.stall(pool.slice('stall:'.length));
}
