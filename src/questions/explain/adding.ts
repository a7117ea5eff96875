import { addDays } from '../../base/day.ts';
import type { Lines } from '../../records/fields.ts';
import type { MovementKind, RecordOf } from '../../records/record.ts';
import { asMovement } from './as-record.ts';
import { errorModel } from './error-model.ts';
import type { Habits } from './habits.ts';
import type { Taking } from './hypothesis.ts';
import { linesFrom, type Touched } from './readings.ts';
import type { Situation } from './situation.ts';

/** What a missing record says, without what every record has. */
export type Says<K extends MovementKind> = Omit<
  RecordOf<K>,
  'id' | 'at' | 'by' | 'date' | 'kind'
> & { readonly date?: string };

/** What happens away from the book, between others, is written down less often; assumed. */
const AWAY: ReadonlySet<string> = new Set(['pass', 'swap-in', 'swap-out', 'gift']);
const AWAY_TIMES = 3;

/** What a record that is written for a missing one says where nobody knows. */
export const REASON = 'Found when a difference was explained';

/** Takings records that may be missing; what they say was read off the difference or the book. */
export class Adding {
  readonly situation: Situation;
  readonly habits: Habits;
  /** The day of a missing record of which nothing says when it was. */
  readonly day: string;
  /** Sellers whose accounts differ or were not looked at. */
  readonly sellers: readonly string[];
  readonly #taking: Taking;

  constructor(situation: Situation, habits: Habits, taking: Taking) {
    this.situation = situation;
    this.habits = habits;
    this.#taking = taking;
    const last = situation.entries.at(-1)?.date ?? situation.ledger.setup.season?.starts;
    this.day = situation.day ?? last ?? '2000-01-01';
    this.sellers = situation.sellers.filter(
      (seller) => situation.isSellerOff(seller) || !situation.isSellerSeen(seller),
    );
  }

  /**
   * A record of goods, for every reading of its lines.
   * @param share chance of who or where
   * @param choice how many products there were to choose from; without it, all of the book
   */
  goods<K extends MovementKind>(
    kind: K,
    touched: readonly Touched[],
    share: number,
    says: (lines: Lines) => Says<K>,
    choice?: number,
  ): void {
    for (const lines of linesFrom(this.situation, touched)) {
      const chance = share * this.habits.chanceOfLines(kind, lines, choice);
      const days = this.#daysOfPrices(lines);
      for (const date of days) this.usual(kind, { ...says(lines), date }, chance / days.length);
    }
  }

  /** A day of each set of prices that these lines may have had; nothing else tells the day. */
  #daysOfPrices(lines: Lines): string[] {
    const days = new Set([this.day]);
    for (const product in lines) {
      for (const { from } of this.situation.ledger.prices.get(product)?.slice(1) ?? []) {
        if (from <= this.day) days.add(addDays(from, -1));
      }
    }
    return [...days];
  }

  /** @param share chance that, of all records of the kind, it is just this one that is missing */
  usual<K extends MovementKind>(kind: K, says: Says<K>, share: number): void {
    const count = Math.max(1, this.habits.countOf(kind));
    const away = AWAY.has(kind) ? AWAY_TIMES : 1;
    this.add(kind, says, errorModel.missing.rate * away * count * share);
  }

  /** @param because a record of the book that makes the missing one likely */
  add<K extends MovementKind>(kind: K, says: Says<K>, chance: number, because?: string): void {
    const date = says.date ?? this.day;
    const adds = asMovement({ id: '', at: '', by: '', kind, ...says, date });
    const hypothesis = { sort: 'missing', chance, adds } as const;
    const effect = this.situation.effects.whole(adds);
    this.#taking.take(effect, 1, because === undefined ? hypothesis : { ...hypothesis, because });
  }

  /** Minor units at the prices of a day. */
  valueOf(lines: Lines, day = this.day): number {
    let value = 0;
    for (const product in lines) {
      value += (lines[product] ?? 0) * this.situation.ledger.priceOn(product, day);
    }
    return value;
  }
}
