import type { Lines } from '../../records/fields.ts';
import type { MovementKind, MovementRecord, RecordOf } from '../../records/record.ts';
import { errorModel } from './error-model.ts';
import type { Habits } from './habits.ts';
import type { Suggest } from './hypothesis.ts';
import { centsFrom, linesFrom, type Touched } from './readings.ts';
import type { Situation } from './situation.ts';

/** A record that should be there and is not; what it said is read off the difference. */
export function missing(situation: Situation, habits: Habits, suggest: Suggest): void {
  const look = new MissingLook(situation, habits, suggest);
  look.families();
  look.passes();
  look.supplier();
  look.online();
  look.stalls();
  look.shareouts();
  look.bank();
  look.sentBack();
}

/** What a missing record says, without what every record has. */
type Says<K extends MovementKind> = Omit<RecordOf<K>, 'id' | 'at' | 'by' | 'date' | 'kind'> & {
  readonly date?: string;
};

class MissingLook {
  readonly #situation: Situation;
  readonly #habits: Habits;
  readonly #suggest: Suggest;
  readonly #day: string;
  /** Sellers whose accounts differ or were not looked at. */
  readonly #sellers: readonly string[];

  constructor(situation: Situation, habits: Habits, suggest: Suggest) {
    this.#situation = situation;
    this.#habits = habits;
    this.#suggest = suggest;
    const last = situation.entries.at(-1)?.date ?? situation.ledger.setup.season?.starts;
    this.#day = situation.day ?? last ?? '2000-01-01';
    this.#sellers = situation.sellers.filter(
      (seller) => situation.isSellerOff(seller) || !situation.isSellerSeen(seller),
    );
  }

  /** Goods out and back, gift units, payments and refunds of each family. */
  families(): void {
    for (const seller of this.#sellers) {
      const share = 1 / this.#situation.sellers.length;
      const out: Touched[] = [
        ['stock', `seller:${seller}`, 1],
        ['credit', `seller:${seller}`, 1],
        ['stock', 'stockroom', -1],
      ];
      this.#goods('handover', out, share, (lines) => ({ seller, lines }));
      this.#goods('return', turned(out), share, (lines) => ({ seller, lines }));
      this.#gifts(seller, share);
      this.#payments(seller, share);
    }
    this.#gifts(undefined, 1);
  }

  passes(): void {
    const { sellers } = this.#situation;
    const share = 1 / (sellers.length * sellers.length);
    for (const from of this.#sellers) {
      for (const to of this.#sellers) {
        if (from === to) continue;
        if (!this.#situation.isSellerOff(from) && !this.#situation.isSellerOff(to)) continue;
        const touched: Touched[] = [
          ['stock', `seller:${from}`, -1],
          ['stock', `seller:${to}`, 1],
          ['credit', `seller:${from}`, -1],
          ['credit', `seller:${to}`, 1],
        ];
        this.#goods('pass', touched, share, (lines) => ({ from, to, lines }));
      }
    }
  }

  supplier(): void {
    const into: Touched[] = [
      ['stock', 'stockroom', 1],
      ['stock', 'supplier', -1],
    ];
    this.#goods('delivery', into, 1, (lines) => ({ lines }));
    const neighbours = [...this.#situation.ledger.setup.neighbours.keys()];
    for (const neighbour of neighbours) {
      const swap: Touched[] = [
        ['stock', 'stockroom', 1],
        ['stock', `neighbour:${neighbour}`, -1],
      ];
      const share = 1 / neighbours.length;
      this.#goods('swap-in', swap, share, (lines) => ({ neighbour, lines }));
      this.#goods('swap-out', turned(swap), share, (lines) => ({ neighbour, lines }));
    }
    // Lost and found goods are what is left when nothing explains a count: only where it shows.
    const lost: Touched[] = [['stock', 'lost', 1]];
    this.#goods('loss', lost, 1, (lines) => ({ lines, reason: REASON }));
    this.#goods('found', turned(lost), 1, (lines) => ({ lines, reason: REASON }));
  }

  online(): void {
    for (const seller of [undefined, ...this.#sellers]) {
      const named = seller === undefined ? {} : { seller };
      const share = seller === undefined ? 0.4 : 0.6 / this.#situation.sellers.length;
      const pool = seller === undefined ? 'pool:post' : `seller:${seller}`;
      this.#goods('online', [['credit', pool, 1]], share / 2, (lines) => {
        const paid = this.#valueOf(lines);
        return { ...named, order: UNKNOWN, lines, paid, sent: 'post' } as const;
      });
      const owed = seller === undefined ? 'buyers' : `owed:${seller}`;
      const touched = [[owed, -1] as const, ['supplier', 1] as const];
      for (const paid of centsFrom(this.#situation, touched)) {
        const says = { ...named, order: UNKNOWN, lines: {}, paid, sent: 'hand' } as const;
        this.#add('online', says, (share / 2) * this.#habits.chanceOf('online', 'paid', paid));
      }
    }
    this.#paidGifts();
  }

  /** Gift units that a buyer paid for and nobody recorded as given. */
  #paidGifts(): void {
    const given = new Set<string>();
    for (const record of this.#situation.entries) {
      if (record.kind === 'gift' && record.order !== undefined) given.add(record.order);
    }
    for (const record of this.#situation.entries) {
      if (record.kind !== 'online' || given.has(record.order)) continue;
      if (record.gifts === undefined || Object.keys(record.gifts).length === 0) continue;
      const { gifts: lines, order, date } = record;
      const named = record.seller === undefined ? {} : { seller: record.seller };
      for (const from of ['supplier', 'stockroom'] as const) {
        const says = { ...named, order, lines, from, date };
        this.#suggestAdd('gift', says, PAID_GIFT_CHANCE / 2, record.id);
      }
    }
  }

  #gifts(seller: string | undefined, share: number): void {
    const named = seller === undefined ? {} : { seller };
    const credited = seller === undefined ? 'pool:gift' : `seller:${seller}`;
    const credit: Touched = ['credit', credited, 1];
    const half = share / 4;
    this.#goods('gift', [credit], half, (lines) => {
      return { ...named, lines, from: 'supplier' } as const;
    });
    const shelf: Touched[] = [credit, ['stock', 'gifted', 1], ['stock', 'stockroom', -1]];
    this.#goods('gift', shelf, half, (lines) => {
      return { ...named, lines, from: 'stockroom' } as const;
    });
  }

  #payments(seller: string, share: number): void {
    const owed = `owed:${seller}`;
    const stillToPay = this.#situation.ledger.balances.moneyOf(owed);
    for (const tender of ['cash', 'cheque', 'card'] as const) {
      const into = tender === 'card' ? 'cards' : 'cashbox';
      const paid = [[owed, -1] as const, [into, 1] as const];
      for (const cents of centsFrom(this.#situation, paid)) {
        const usual = this.#habits.chanceOf('payment', 'cents', cents);
        const chance = cents === stillToPay ? Math.max(usual, PAYS_ALL) : usual;
        this.#add('payment', { seller, tender, cents }, (share * chance) / 3);
      }
      const back = [[owed, 1] as const, [into, -1] as const];
      for (const cents of centsFrom(this.#situation, back)) {
        const chance = this.#habits.chanceOf('refund', 'cents', cents);
        this.#add('refund', { seller, tender, cents }, (share * chance) / 3);
      }
    }
    for (const cents of centsFrom(this.#situation, [['losses', 1]])) {
      const chance =
        cents === stillToPay ? PAYS_ALL : this.#habits.chanceOf('loss', 'cents', cents);
      this.#add('loss', { seller, cents, reason: REASON }, share * chance);
    }
  }

  /** A stall that was planned and not settled: what it sold, and its takings. */
  stalls(): void {
    const settled = new Set<string>();
    for (const record of this.#situation.entries) {
      if (record.kind === 'stall-close') settled.add(record.stall);
    }
    const stalls = [...this.#situation.ledger.setup.stalls.values()];
    for (const { stall, starts } of stalls) {
      const date = starts.slice(0, 10);
      if (settled.has(stall) || date > this.#day) continue;
      const touched: Touched[] = [
        ['credit', `pool:stall:${stall}`, 1],
        ['stock', 'stall-sold', 1],
        ['stock', 'stockroom', -1],
      ];
      for (const sold of linesFrom(this.#situation, touched)) this.#stall(stall, date, sold);
    }
  }

  #stall(stall: string, date: string, sold: Lines): void {
    const off = (account: string) => Math.max(0, this.#situation.off('money', account));
    const damaged: Record<string, number> = {};
    const out: Record<string, number> = { ...sold };
    for (const product of this.#situation.products) {
      const units = this.#situation.off('stock', 'lost', product);
      if (units <= 0) continue;
      damaged[product] = units;
      out[product] = (out[product] ?? 0) + units;
    }
    const cards = off('cards');
    const isCounted = this.#situation.isSeen('money', 'cashbox');
    const takings = this.#valueOf(sold, date) - cards;
    const cash = isCounted ? off('cashbox') : Math.max(0, takings);
    const paidout = off('fees');
    const says = { stall, date, out, back: {}, float: 0, cash, cards, cheques: 0 };
    const extras = {
      ...(Object.keys(damaged).length === 0 ? {} : { damaged }),
      ...(paidout === 0 ? {} : { paidout }),
    };
    const chance = STALL_CHANCE * this.#habits.chanceOfLines('stall-close', sold);
    this.#suggestAdd('stall-close', { ...says, ...extras }, chance, stall);
  }

  /** A pool that was shared out on paper and not in the book. */
  shareouts(): void {
    const { stalls } = this.#situation.ledger.setup;
    const lines: Record<string, Lines> = {};
    for (const seller of this.#sellers) {
      const read = linesFrom(this.#situation, [['credit', `seller:${seller}`, 1]])[0];
      if (read !== undefined) lines[seller] = read;
    }
    if (Object.keys(lines).length === 0) return;
    const pools = ['post', 'gift', ...[...stalls.keys()].map((stall) => `stall:${stall}`)];
    for (const pool of pools) {
      const account = `pool:${pool}`;
      if (this.#situation.isSeen('credit', account) && !this.#situation.isOff('credit', account)) {
        continue;
      }
      this.#suggestAdd('shareout', { pool, lines }, SHAREOUT_CHANCE, undefined);
    }
  }

  bank(): void {
    const amounts = (touched: readonly (readonly [string, 1 | -1])[]) =>
      centsFrom(this.#situation, touched);
    const usual = (kind: MovementKind, part: string, cents: number) =>
      this.#habits.chanceOf(kind, part, cents);
    for (const cents of amounts([
      ['cashbox', -1],
      ['bank', 1],
    ])) {
      const isAll = cents === this.#situation.ledger.balances.moneyOf('cashbox');
      const chance = usual('deposit', 'cents', cents);
      this.#add('deposit', { cents }, isAll ? Math.max(chance, PAYS_ALL) : chance);
    }
    for (const to of ['bank', 'supplier'] as const) {
      const fees = [0, ...amounts([['fees', 1]])];
      for (const cents of amounts([
        [to, 1],
        ['cards', -1],
      ])) {
        for (const fee of fees) {
          const net = cents - (this.#situation.isSeen('money', to) ? 0 : fee);
          this.#add('card-settle', { cents: net, fee, to }, usual('card-settle', 'cents', net) / 2);
        }
      }
    }
    for (const cents of amounts([
      ['bank', -1],
      ['supplier', 1],
    ])) {
      this.#add('debit', { cents }, usual('debit', 'cents', cents));
    }
    for (const cents of amounts([
      ['bank', -1],
      ['fees', 1],
    ])) {
      this.#add('bank-fee', { cents }, usual('bank-fee', 'cents', cents));
    }
    for (const proceeds of amounts([
      ['supplier', 1],
      ['proceeds', -1],
    ])) {
      this.#add('settle', { proceeds }, usual('settle', 'proceeds', proceeds));
    }
  }

  /** Cheques that came back and debits that were sent back, known to the bank alone. */
  sentBack(): void {
    const { standing } = this.#situation.ledger;
    const known = new Set<string | undefined>();
    const fees = new Set([0, ...centsFrom(this.#situation, [['fees', 1]])]);
    for (const record of this.#situation.entries) {
      if (record.kind === 'bounced') known.add(standing.currentOf(record.payment)?.id);
      if (record.kind === 'debit-returned') known.add(standing.currentOf(record.debit)?.id);
      if ('fee' in record && record.fee !== undefined) fees.add(record.fee);
    }
    for (const record of this.#situation.entries) {
      if (known.has(record.id)) continue;
      if (record.kind === 'payment' && record.tender === 'cheque') this.#bounced(record, fees);
      if (record.kind === 'debit') {
        for (const fee of fees) {
          const says = { debit: record.id, ...(fee === 0 ? {} : { fee }) };
          this.#suggestAdd('debit-returned', says, BOUNCE_CHANCE / fees.size, record.id);
        }
      }
    }
  }

  #bounced(record: RecordOf<'payment'>, fees: ReadonlySet<number>): void {
    for (const fee of fees) {
      const says = { payment: record.id, ...(fee === 0 ? {} : { fee }) };
      const chance = BOUNCE_CHANCE / fees.size;
      this.#suggestAdd('bounced', says, chance, record.id);
      if (fee > 0) this.#suggestAdd('bounced', { ...says, charge: true }, chance / 2, record.id);
    }
  }

  #goods<K extends MovementKind>(
    kind: K,
    touched: readonly Touched[],
    share: number,
    says: (lines: Lines) => Says<K>,
  ): void {
    for (const lines of linesFrom(this.#situation, touched)) {
      this.#add(kind, says(lines), share * this.#habits.chanceOfLines(kind, lines));
    }
  }

  #add<K extends MovementKind>(kind: K, says: Says<K>, share: number): void {
    const usual = Math.max(1, this.#habits.countOf(kind));
    this.#suggestAdd(kind, says, errorModel.missing.rate * usual * share, undefined);
  }

  #suggestAdd<K extends MovementKind>(
    kind: K,
    says: Says<K>,
    chance: number,
    because: string | undefined,
  ): void {
    const date = says.date ?? this.#day;
    // The kind and its fields came in as a pair; the compiler cannot follow it through a spread.
    const adds = { id: '', at: '', by: '', kind, ...says, date } as unknown as MovementRecord;
    const hypothesis = { sort: 'missing', chance, adds } as const;
    const effect = this.#situation.effects.whole(adds);
    this.#suggest(effect, 1, because === undefined ? hypothesis : { ...hypothesis, because });
  }

  #valueOf(lines: Lines, day = this.#day): number {
    let value = 0;
    for (const product in lines) {
      value += (lines[product] ?? 0) * this.#situation.ledger.priceOn(product, day);
    }
    return value;
  }
}

/** What a record that is written for a missing one says where nobody knows. */
const UNKNOWN = 'not known';
const REASON = 'Found when a difference was explained';
/** Chance that a payment is just what is still to pay; that paid gift units were not recorded. */
const PAYS_ALL = 0.3;
const PAID_GIFT_CHANCE = 0.2;
/** Chances, all assumed: a planned stall was held and not settled; a pool shared on paper only. */
const STALL_CHANCE = 0.3;
const SHAREOUT_CHANCE = 0.05;
/** A cheque or debit that came back and was not recorded. */
const BOUNCE_CHANCE = 0.005;

function turned(touched: readonly Touched[]): Touched[] {
  return touched.map(([ledger, account, sign]) => [ledger, account, sign === 1 ? -1 : 1]);
}
