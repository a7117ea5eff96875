import type { MovementRecord, RecordOf } from '../../records/record.ts';
import { unitsOf } from '../../records/units-of.ts';
import { addTo } from '../../solvers/gap/effect.ts';
import { Effects } from './effects.ts';
import { type Hypothesis, outcomeOf } from './hypothesis.ts';
import { Places } from './places.ts';
import type { Situation } from './situation.ts';

/** What a count of the stockroom said about a product that differs now. */
interface Counted {
  readonly date: string;
  readonly product: string;
  /** Counted less book at the end of that day. */
  readonly difference: number;
}

/** How much less likely a mistake is that an earlier count should have shown, and did not. */
const COUNT_SAYS_NO = 0.03;

/**
 * Counts of the stockroom earlier in the season: one that agreed limits the search to what came
 * after it; one that differed by as much as today puts the mistake before it.
 */
export class EarlierCounts {
  readonly #counted: readonly Counted[];
  readonly #shelf: Effects;

  constructor(situation: Situation) {
    const places = new Places(false);
    for (const product of situation.hotProducts) places.add('stock', 'stockroom', product);
    this.#shelf = new Effects(situation.ledger, places, undefined);
    this.#counted = countedOf(situation, this.#shelf);
  }

  factor(hypothesis: Hypothesis): number {
    if (this.#counted.length === 0) return 1;
    const { before, after } = outcomeOf(hypothesis);
    let factor = 1;
    for (const { date, product, difference } of this.#counted) {
      if (isOn(before, date) || isOn(after, date)) continue;
      const inAll = this.#unitsBy(after, product) - this.#unitsBy(before, product);
      if (inAll === 0) continue;
      const byThen = this.#unitsBy(after, product, date) - this.#unitsBy(before, product, date);
      if (byThen !== (difference === 0 ? 0 : inAll)) factor *= COUNT_SAYS_NO;
    }
    return Math.max(factor, COUNT_SAYS_NO ** 2);
  }

  /** Units that a record brings into the stockroom, up to a day where one is given. */
  #unitsBy(record: MovementRecord | undefined, product: string, date?: string): number {
    if (record === undefined || (date !== undefined && record.date > date)) return 0;
    const effect = this.#shelf.whole(record);
    const at = effect.places.findIndex((place) => this.#shelf.places.at(place).product === product);
    return at < 0 ? 0 : (effect.amounts[at] ?? 0);
  }
}

/** On the day of the count itself nobody knows which side of it a movement was. */
function isOn(record: MovementRecord | undefined, date: string): boolean {
  return record?.date === date;
}

function countedOf(situation: Situation, shelf: Effects): Counted[] {
  const { entries, hotProducts } = situation;
  if (hotProducts.size === 0 || !entries.some(({ kind }) => kind === 'count')) return [];
  const found: Counted[] = [];
  const book = new Map<number, number>();
  for (const [at, record] of entries.entries()) {
    addTo(book, shelf.whole(record), 1);
    if (entries[at + 1]?.date === record.date) continue;
    for (const count of countsOn(entries, at)) {
      for (const product of hotProducts) {
        if (!Object.hasOwn(count.lines, product)) continue;
        const units = unitsOf(count.lines, product);
        const place = shelf.places.numberOf('stock', 'stockroom', product) ?? -1;
        const difference = units - (book.get(place) ?? 0);
        const now = situation.off('stock', 'stockroom', product);
        // A count that was off by something else tells nothing about today's difference.
        if (difference !== 0 && difference !== now) continue;
        found.push({ date: record.date, product, difference });
      }
    }
  }
  return found;
}

/** The counts of the day that ends at a place of the list. */
function countsOn(entries: readonly MovementRecord[], last: number): RecordOf<'count'>[] {
  const found: RecordOf<'count'>[] = [];
  const date = entries[last]?.date;
  for (let at = last; at >= 0 && entries[at]?.date === date; at -= 1) {
    const record = entries[at];
    if (record?.kind === 'count') found.push(record);
  }
  return found;
}
