import { isDay } from '../../../base/day.ts';
import { done, type Outcome, refused } from '../../../base/outcome.ts';
import type { Ledger } from '../../../ledger/ledger.ts';
import { inBook, placeKind, type Seen } from '../../../questions/explain/seen.ts';
import { productName } from '../../../statements/account-name.ts';
import type { FieldError } from '../../parts/notice.tsx';
import { moneyToType, typedMoney, typedWhole } from '../../parts/typed.ts';
import { say } from '../../say.ts';

/**
 * What is asked about stands in the address, so that it is still there after a look at a record:
 * `/why?about=seller:ada&day=2027-03-01&seller:ada.honey=12&seller:ada=4000&agrees=stockroom`.
 * `/why?count=ID` is short for the stockroom as a saved count has it.
 */
export interface Asked {
  readonly day: string;
  readonly places: readonly string[];
  /** The places of which something was said, or that all of it agrees. */
  readonly seen: readonly Seen[];
}

export function readAsked(search: URLSearchParams, ledger: Ledger, today: string): Asked {
  const count = ledger.standing.currentOf(search.get('count') ?? '');
  if (count?.kind === 'count') {
    const place = 'stockroom';
    return { day: count.date, places: [place], seen: [{ place, units: count.lines }] };
  }
  const day = search.get('day') ?? '';
  const about = [...new Set(search.getAll('about'))];
  const places = about.filter((place) => placeKind(ledger, place) !== undefined);
  const agrees = new Set(search.getAll('agrees'));
  const seen = places.flatMap((place) => {
    const said = saidOf(search, ledger, place);
    const isSaid = said.minor !== undefined || Object.keys(said.units).length > 0;
    return isSaid || agrees.has(place) ? [said] : [];
  });
  return { day: isDay(day) ? day : today, places, seen };
}

function saidOf(search: URLSearchParams, ledger: Ledger, place: string): Seen {
  const units: Record<string, number> = {};
  for (const product of ledger.prices.keys()) {
    const said = wholeIn(search, `${place}.${product}`);
    if (said !== undefined) units[product] = said;
  }
  const minor = wholeIn(search, place);
  return { place, units, ...(minor === undefined ? {} : { minor }) };
}

function wholeIn(search: URLSearchParams, name: string): number | undefined {
  const said = search.get(name);
  const whole = said !== null && /^-?\d+$/.test(said) ? Number(said) : Number.NaN;
  return Number.isSafeInteger(whole) ? whole : undefined;
}

export function askedAddress({ day, places, seen }: Asked): string {
  const search = new URLSearchParams(places.map((place) => ['about', place]));
  search.set('day', day);
  for (const { place, units, minor } of seen) {
    for (const product in units) search.set(`${place}.${product}`, String(units[product]));
    if (minor !== undefined) search.set(place, String(minor));
    else if (Object.keys(units).length === 0) search.append('agrees', place);
  }
  return `/why?${search}`;
}

/** One place as typed. */
export interface PlaceTyped {
  readonly units: Readonly<Record<string, string>>;
  readonly money: string;
  /** The money stands on the account's negative side: overdrawn, still to pay. */
  readonly below: boolean;
  readonly agrees: boolean;
}

export interface WhyTyped {
  readonly day: string;
  readonly places: Readonly<Record<string, PlaceTyped>>;
}

export function typedOf(asked: Asked, ledger: Ledger, currency: string): WhyTyped {
  const entries = asked.places.map((place) => {
    const said = asked.seen.find((each) => each.place === place);
    const minor = said?.minor;
    const units = Object.entries(said?.units ?? {});
    const typed: PlaceTyped = {
      units: Object.fromEntries(units.map(([product, many]) => [product, String(many)])),
      money: minor === undefined ? '' : moneyToType(minor, currency),
      below: (minor ?? inBook(ledger, place, asked.day).minor ?? 0) < 0,
      agrees: said !== undefined && minor === undefined && units.length === 0,
    };
    return [place, typed] as const;
  });
  return { day: asked.day, places: Object.fromEntries(entries) };
}

/** What was typed as figures; refused is what does not fit, and a form that says nothing. */
export function askedOf(
  typed: WhyTyped,
  ledger: Ledger,
  currency: string,
): Outcome<Asked, readonly FieldError[]> {
  const errors: FieldError[] = [];
  const seen: Seen[] = [];
  if (!isDay(typed.day))
    errors.push({ field: 'day', words: say`Choose the day of what was seen.` });
  for (const [place, said] of Object.entries(typed.places)) {
    const units = unitsIn(place, said, ledger, errors);
    const money = said.money.trim();
    const minor = money === '' ? undefined : typedMoney(money, currency);
    if (minor?.ok === false) errors.push({ field: place, words: minor.refusal });
    const amount = minor?.ok === true ? (said.below ? 0 - minor.value : minor.value) : undefined;
    const isSaid = amount !== undefined || Object.keys(units).length > 0 || said.agrees;
    if (isSaid) seen.push({ place, units, ...(amount === undefined ? {} : { minor: amount }) });
  }
  const places = Object.keys(typed.places);
  if (errors.length === 0 && seen.length === 0) {
    errors.push({ field: '', words: say`Write at least one figure that was seen.` });
  }
  return errors.length > 0 ? refused(errors) : done({ day: typed.day, places, seen });
}

function unitsIn(
  place: string,
  said: PlaceTyped,
  ledger: Ledger,
  errors: FieldError[],
): Record<string, number> {
  const units: Record<string, number> = {};
  for (const [product, text] of Object.entries(said.units)) {
    if (text.trim() === '') continue;
    const whole = typedWhole(text);
    if (whole.ok) units[product] = whole.value;
    else {
      const words = `${productName(ledger.setup, product)}: ${whole.refusal}`;
      errors.push({ field: `${place}.${product}`, words });
    }
  }
  return units;
}
