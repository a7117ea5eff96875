import { canonicalText } from '../../base/canonical-text.ts';
import { byText } from '../../base/order.ts';
import { sum } from '../../base/sum.ts';
import type { Lines } from '../../records/fields.ts';
import type { StallEntry } from '../../records/stall-entry.ts';
import { unitsOf } from '../../records/units-of.ts';
import { tallied } from '../denominations.ts';

/** What was counted at one end of a stall's day: by one phone, or by several that are added. */
export interface StallCount {
  /** The counts that stand, in order of time. */
  readonly entries: readonly StallEntry[];
  /**
   * True where several counts stand and nobody has said yet whether they are of the same goods or
   * to be added. The figures here are then those of the last one.
   */
  readonly toChoose: boolean;
  readonly lines: Lines;
  readonly damaged: Lines;
  readonly pieces: Readonly<Record<string, number>>;
  /** Minor units of the cash. */
  readonly cash: number;
}

/** A stall's sheet: every phone's lines together. Units, minor units. */
export interface StallSheet {
  /** Every line that counts, in order of time. */
  readonly entries: readonly StallEntry[];
  /** The readiness card as it was written last. */
  readonly ready: StallEntry | undefined;
  readonly opening: StallCount;
  readonly closing: StallCount;
  readonly brought: readonly StallEntry[];
  readonly drops: readonly StallEntry[];
  /** Minor units that the drops took away. */
  readonly dropped: number;
  /** Opening count and goods brought. */
  readonly out: Lines;
  /** Tapped as sold. */
  readonly sold: Lines;
  readonly soldUnits: number;
  /** Out less tapped as sold, where anything was written as out; negative: not all was written. */
  readonly left: Lines;
  /** The three signs of each phone that wrote a line. */
  readonly phones: readonly string[];
}

/**
 * The sheet of a stall from the lines of all its phones, in any order, any of them several times.
 * The same set of lines gives the same sheet on every device.
 */
export function stallSheet(written: readonly StallEntry[]): StallSheet {
  const entries = standingEntries(written);
  const of = (what: StallEntry['what']) => entries.filter((entry) => entry.what === what);
  const opening = countOf(of('open'), of('both'));
  const brought = of('brought');
  const out = addedLines([opening, ...brought]);
  const sold = addedLines(of('sold'));
  const drops = of('drop');
  return {
    entries,
    ready: of('ready').at(-1),
    opening,
    closing: countOf(of('count'), of('both')),
    brought,
    drops,
    dropped: sum(drops.map(cashOf)),
    out,
    sold,
    soldUnits: sum(Object.values(sold)),
    left: leftOf(out, sold),
    phones: [...new Set(entries.map(phoneOf))].sort(byText),
  };
}

/** The three signs of the phone that wrote a line. */
export function phoneOf({ id }: Pick<StallEntry, 'id'>): string {
  return id.slice(0, id.indexOf('-'));
}

/** Minor units of cash that a line counts. */
export function cashOf({ pieces, cents }: Pick<StallEntry, 'pieces' | 'cents'>): number {
  return pieces === undefined ? (cents ?? 0) : tallied(pieces);
}

/** Each line once, without those taken back, in order of time. */
function standingEntries(written: readonly StallEntry[]): StallEntry[] {
  const once = new Map<string, StallEntry>();
  for (const entry of written) {
    const known = once.get(entry.id);
    // Two lines of one id cannot be; should they, every device takes the same one.
    const isFirst = known === undefined || canonicalText(entry) < canonicalText(known);
    if (isFirst) once.set(entry.id, entry);
  }
  const undone = new Set<string>();
  for (const { what, of = [] } of once.values()) {
    if (what === 'undo') for (const id of of) undone.add(id);
  }
  return [...once.values()]
    .filter(({ id, what }) => what !== 'undo' && !undone.has(id))
    .sort((a, b) => byText(a.at, b.at) || byText(a.id, b.id));
}

function countOf(counts: readonly StallEntry[], both: readonly StallEntry[]): StallCount {
  const added = both.some(({ of = [] }) => counts.every(({ id }) => of.includes(id)));
  const toChoose = counts.length > 1 && !added;
  const used = toChoose ? counts.slice(-1) : counts;
  return {
    entries: counts,
    toChoose,
    lines: addedLines(used),
    damaged: addedLines(used.map(({ damaged }) => ({ lines: damaged }))),
    pieces: addedLines(used.map(({ pieces }) => ({ lines: pieces }))),
    cash: sum(used.map(cashOf)),
  };
}

/** Several lines added up, key by key; a 0 that was written stays. */
export function addedLines(all: readonly { readonly lines?: Lines | undefined }[]): Lines {
  const added: Record<string, number> = {};
  for (const { lines = {} } of all) {
    for (const key in lines) added[key] = unitsOf(added, key) + unitsOf(lines, key);
  }
  return added;
}

function leftOf(out: Lines, sold: Lines): Lines {
  const left: Record<string, number> = {};
  for (const product in out) left[product] = unitsOf(out, product) - unitsOf(sold, product);
  return left;
}
