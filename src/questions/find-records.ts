import { minorDigits } from '../base/currency.ts';
import { finished } from '../base/finished.ts';
import { byText } from '../base/order.ts';
import { plainText } from '../base/plain-text.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { type BookRecord, byWritten, isMovement, type Kind } from '../records/record.ts';
import { accountsOf, type PlaceId } from './places.ts';
import { postingsOf } from './postings-of.ts';

/** What to look for; every condition that is there must hold. */
export interface RecordSearch {
  readonly kinds?: readonly Kind[];
  /** Records that name this seller, or any seller of this family. */
  readonly seller?: string;
  readonly family?: string;
  readonly product?: string;
  readonly place?: PlaceId;
  /** Days, both included; set-up kinds go by the day they were written. */
  readonly from?: string;
  readonly to?: string;
  /** Words that must all be in the record's own texts, names or amount; case and accents aside. */
  readonly text?: string;
  /** Also records that were edited or removed, and removals. */
  readonly gone?: boolean;
}

export type RecordState = 'counts' | 'edited' | 'removed';

export interface FoundRecord {
  readonly record: BookRecord;
  readonly state: RecordState;
}

/** Records that fit, the latest day first, then the latest written. */
export function findRecords(ledger: Ledger, search: RecordSearch): FoundRecord[] {
  return finished(findInSteps(ledger, search));
}

/** Records looked at in one step: a few milliseconds, also on a slow phone. */
const IN_ONE_STEP = 250;

/** `findRecords` in steps, for a screen that answers in between. */
export function* findInSteps(
  ledger: Ledger,
  search: RecordSearch,
): Generator<undefined, FoundRecord[]> {
  const fits = conditions(ledger, search);
  const found: FoundRecord[] = [];
  let looked = 0;
  for (const record of ledger.standing.records()) {
    looked += 1;
    if (looked % IN_ONE_STEP === 0) yield undefined;
    const state = stateOf(ledger, record);
    const shown = search.gone === true || (state === 'counts' && record.kind !== 'void');
    if (shown && fits.every((holds) => holds(record))) found.push({ record, state });
  }
  return found.sort(
    (a, b) => byText(dayOf(b.record), dayOf(a.record)) || byWritten(b.record, a.record),
  );
}

/** Whether a record counts, or what took its place. */
export function stateOf(ledger: Ledger, record: BookRecord): RecordState {
  if (ledger.standing.counts(record)) return 'counts';
  const after = ledger.standing.supersededBy(record.id);
  return after === undefined || after.kind === 'void' ? 'removed' : 'edited';
}

/** The day a movement happened, or the day a set-up record or removal was written (UTC). */
export function dayOf(record: BookRecord): string {
  return 'date' in record ? record.date : record.at.slice(0, 10);
}

type Condition = (record: BookRecord) => boolean;

function conditions(ledger: Ledger, search: RecordSearch): Condition[] {
  const { kinds, seller, family, product, place, from, to } = search;
  const words = plain(search.text ?? '')
    .split(/\s+/)
    .filter(Boolean);
  const list: (Condition | false)[] = [
    kinds !== undefined && kinds.length > 0 && ((record) => kinds.includes(record.kind)),
    from !== undefined && ((record) => dayOf(record) >= from),
    to !== undefined && ((record) => dayOf(record) <= to),
    seller !== undefined && ((record) => sellersIn(record).includes(seller)),
    family !== undefined && ((record) => isOfFamily(ledger, record, family)),
    product !== undefined && ((record) => productsIn(record).includes(product)),
    place !== undefined && ((record) => isAtPlace(ledger, record, place)),
    words.length > 0 && ((record) => hasWords(ledger, record, words)),
  ];
  return list.filter((condition) => condition !== false);
}

function isOfFamily(ledger: Ledger, record: BookRecord, family: string): boolean {
  if ((record.kind === 'family' || record.kind === 'seller') && record.family === family) {
    return true;
  }
  return sellersIn(record).some((id) => ledger.setup.sellers.get(id)?.family === family);
}

function isAtPlace(ledger: Ledger, record: BookRecord, place: PlaceId): boolean {
  if (!isMovement(record)) return false;
  const { stock, money } = accountsOf(place);
  if (record.kind === 'count' && record.sheet !== undefined) return place === 'stalls';
  // A count moves nothing and still belongs to the stockroom, an order to the families.
  if (record.kind === 'count' || record.kind === 'exchange') return place === 'stockroom';
  if (record.kind === 'order') return place === 'families';
  if (record.kind === 'supply-order') return place === 'supplier';
  return postingsOf(ledger, record).some(({ ledger: name, from, to }) => {
    const within = name === 'stock' ? stock : name === 'money' ? money : undefined;
    return within?.(from) || within?.(to);
  });
}

/** Every seller that a record names. */
export function sellersIn(record: BookRecord): string[] {
  const named: string[] = [];
  if ('seller' in record && record.seller !== undefined) named.push(record.seller);
  if (record.kind === 'pass') named.push(record.from, record.to);
  if (record.kind === 'shareout') named.push(...Object.keys(record.lines));
  if (record.kind === 'stall') named.push(...record.shifts.map((shift) => shift.seller));
  return named;
}

/** Every product that a record names. */
export function productsIn(record: BookRecord): string[] {
  if (record.kind === 'shareout') return Object.values(record.lines).flatMap(Object.keys);
  const named: string[] = [];
  if ('product' in record) named.push(record.product);
  if ('lines' in record) named.push(...Object.keys(record.lines ?? {}));
  if ('gifts' in record) named.push(...Object.keys(record.gifts ?? {}));
  if (record.kind === 'stall-close') named.push(...Object.keys(record.out));
  return named;
}

function hasWords(ledger: Ledger, record: BookRecord, words: readonly string[]): boolean {
  const text = textIn(keptTexts(ledger), ledger, record);
  return words.every((word) => text.includes(word));
}

/** What records are searched by; a record that arrives may bring a name for many others. */
interface KeptTexts {
  readonly size: number;
  readonly byRecord: Map<BookRecord, string>;
}

const kept = new WeakMap<Ledger, KeptTexts>();

function keptTexts(ledger: Ledger): KeptTexts {
  const known = kept.get(ledger);
  if (known?.size === ledger.size) return known;
  const fresh: KeptTexts = { size: ledger.size, byRecord: new Map() };
  kept.set(ledger, fresh);
  return fresh;
}

function textIn({ byRecord }: KeptTexts, ledger: Ledger, record: BookRecord): string {
  const known = byRecord.get(record);
  if (known !== undefined) return known;
  const text = plain(textsOf(ledger, record).join(' '));
  byRecord.set(record, text);
  return text;
}

/**
 * Makes the texts of some more records ready to be searched, so that nobody who types waits for all
 * of them at once; false while some are left.
 */
export function readyTexts(ledger: Ledger, most: number): boolean {
  const texts = keptTexts(ledger);
  let made = 0;
  for (const record of ledger.standing.records()) {
    if (texts.byRecord.has(record)) continue;
    if (made === most) return false;
    textIn(texts, ledger, record);
    made += 1;
  }
  return true;
}

/** Free texts and numbers of a record, with the names of the people and goods it is about. */
function textsOf(ledger: Ledger, record: BookRecord): string[] {
  const { setup } = ledger;
  const names = [
    ...sellersIn(record).flatMap((id) => {
      const seller = setup.sellers.get(id);
      return [seller?.name ?? id, setup.families.get(seller?.family ?? '')?.name ?? ''];
    }),
    ...productsIn(record).map((id) => setup.products.get(id)?.name ?? id),
  ];
  if ('neighbour' in record) names.push(setup.neighbours.get(record.neighbour)?.name ?? '');
  if ('host' in record) names.push(setup.hosts.get(record.host)?.name ?? '');
  if ('stall' in record) {
    names.push(setup.hosts.get(setup.stalls.get(record.stall)?.host ?? '')?.name ?? '');
  }
  return [...names, ...ownTexts(record, setup.season?.currency ?? '')];
}

function ownTexts(record: BookRecord, currency: string): string[] {
  const texts: string[] = [record.kind];
  for (const [field, value] of Object.entries(record)) {
    if (field === 'id' || field === 'at' || field === 'by' || field === 'replaces') continue;
    if (typeof value === 'string') texts.push(value);
    // An amount is found as it is written: 36.00.
    if (typeof value === 'number') texts.push(decimal(value, currency));
    if (Array.isArray(value)) texts.push(JSON.stringify(value));
  }
  return texts;
}

function decimal(minor: number, currency: string): string {
  const digits = minorDigits(currency);
  const text = String(minor).padStart(digits + 1, '0');
  const cut = text.length - digits;
  return digits === 0 ? text : `${text.slice(0, cut)}.${text.slice(cut)}`;
}

/** Plain letters, and no marks between thousands. */
function plain(text: string): string {
  return plainText(text).replace(/(\d),(?=\d{3})/g, '$1');
}
