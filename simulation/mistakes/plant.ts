import { addDays } from '../../src/base/day.ts';
import { uuid7 } from '../../src/base/id.ts';
import type { Seeded } from '../../src/base/seeded.ts';
import type {
  BookRecord,
  MovementKind,
  MovementRecord,
  RecordOf,
} from '../../src/records/record.ts';

/** A season's records with one mistake in them, as somebody would have keyed it. */
export interface Planted {
  readonly records: readonly BookRecord[];
  /** What was wrong, for the listing. */
  readonly told: string;
}

/** Plants one mistake of a sort; undefined where the season gives no chance for it. */
export type Plant = (records: readonly BookRecord[], random: Seeded) => Planted | undefined;

/** Every sort of mistake that is planted, by name. */
export const plants: Readonly<Record<string, Plant>> = {
  'goods out: wrong digit': numberOf('handover', wrongDigit),
  'goods out: digits swapped': numberOf('handover', swappedDigits),
  'goods out: digit added or left out': numberOf('handover', digitMoreOrLess),
  'goods out: cases for singles': numberOf('handover', caseForSingles),
  'goods out: off by one': numberOf('handover', offByOne),
  'goods out: keyed twice': doubled('handover'),
  'goods out: missing': left('handover'),
  'goods out: wrong seller': renamed('handover', 'seller', 'seller'),
  'goods out: wrong product': wrongProduct('handover'),
  'goods out: line left out': lineLeftOut('handover'),
  'goods out keyed as goods back': otherKind('handover', 'return'),
  'goods back keyed as goods out': otherKind('return', 'handover'),
  'goods back: missing': left('return'),
  'goods back: wrong digit': numberOf('return', wrongDigit),
  'pass on: missing': left('pass'),
  'delivery: wrong digit': numberOf('delivery', wrongDigit),
  'delivery: singles for cases': numberOf('delivery', casesKeyed),
  'delivery: keyed twice': doubled('delivery'),
  'delivery: missing': left('delivery'),
  'swap: missing': left('swap-out'),
  'swap: wrong neighbour': renamed('swap-in', 'neighbour', 'neighbour'),
  'swap in keyed as swap out': otherKind('swap-in', 'swap-out'),
  'gift units: missing': left('gift'),
  'gift units: wrong source': wrongSource,
  'online order: missing': left('online'),
  'online order: keyed twice': doubled('online'),
  'stall: not settled': left('stall-close'),
  'stall: brought back wrong': stallNumber('back', wrongDigit),
  'stall: taken out wrong': stallNumber('out', swappedOrWrong),
  'stall: cash wrong': stallCash,
  'share-out: missing': left('shareout'),
  'share-out: wrong seller': shareoutSeller,
  'payment: missing': left('payment'),
  'payment: keyed twice': doubled('payment'),
  'payment: digits swapped': amountOf('payment', swappedDigits),
  'payment: wrong digit': amountOf('payment', wrongDigit),
  'payment: wrong seller': renamed('payment', 'seller', 'seller'),
  'payment: wrong tender': wrongTender,
  'bounced cheque: missing': left('bounced'),
  'deposit: missing': left('deposit'),
  'deposit: keyed twice': doubled('deposit'),
  'deposit: digits swapped': amountOf('deposit', swappedDigits),
  'card payout: missing': left('card-settle'),
  'debit: not as announced': amountOf('debit', swappedOrWrong),
  'debit: missing': left('debit'),
};

type Slip = (value: number, random: Seeded, caseUnits: number) => number | undefined;

function wrongDigit(value: number, random: Seeded): number | undefined {
  const digits = [...String(value)];
  const at = random.whole(0, digits.length - 1);
  digits[at] = String(random.whole(at === 0 ? 1 : 0, 9));
  const wrong = Number(digits.join(''));
  return wrong === value || wrong === 0 ? undefined : wrong;
}

function swappedDigits(value: number, random: Seeded): number | undefined {
  const digits = [...String(value)];
  if (digits.length < 2) return undefined;
  const at = random.whole(0, digits.length - 2);
  [digits[at], digits[at + 1]] = [digits[at + 1] ?? '', digits[at] ?? ''];
  const wrong = digits.join('');
  return wrong.startsWith('0') || wrong === String(value) ? undefined : Number(wrong);
}

function swappedOrWrong(value: number, random: Seeded): number | undefined {
  return swappedDigits(value, random) ?? wrongDigit(value, random);
}

function digitMoreOrLess(value: number, random: Seeded): number | undefined {
  const digits = String(value);
  if (random.chance(50) && digits.length > 1) {
    const at = random.whole(0, digits.length - 1);
    const wrong = digits.slice(0, at) + digits.slice(at + 1);
    return wrong.startsWith('0') ? undefined : Number(wrong);
  }
  const at = random.whole(0, digits.length);
  const digit = random.chance(60) ? (digits[at - 1] ?? '1') : String(random.whole(0, 9));
  const wrong = digits.slice(0, at) + digit + digits.slice(at);
  return wrong.startsWith('0') ? undefined : Number(wrong);
}

function caseForSingles(value: number, _random: Seeded, caseUnits: number): number | undefined {
  return value % caseUnits === 0 ? value / caseUnits : value * caseUnits;
}

/** Cases were counted and their number was keyed as singles. */
function casesKeyed(value: number, _random: Seeded, caseUnits: number): number | undefined {
  return value % caseUnits === 0 && caseUnits > 1 ? value / caseUnits : undefined;
}

function offByOne(value: number, random: Seeded): number | undefined {
  return value > 1 && random.chance(50) ? value - 1 : value + 1;
}

/** One line's units are keyed wrongly. */
function numberOf(kind: 'handover' | 'return' | 'delivery', slip: Slip): Plant {
  return (records, random) => {
    for (const record of someOf(records, kind, random)) {
      if (Object.keys(record.lines).length === 0) continue;
      const product = random.pick(Object.keys(record.lines));
      const units = record.lines[product] ?? 0;
      const wrong = slip(units, random, caseOf(records, product));
      if (wrong === undefined || wrong === units) continue;
      const keyed = { ...record, lines: { ...record.lines, [product]: wrong } };
      return keyedAs(records, record, keyed, `${product} ${units} keyed as ${wrong}`);
    }
    return undefined;
  };
}

function amountOf(kind: 'payment' | 'deposit' | 'debit', slip: Slip): Plant {
  return (records, random) => {
    for (const record of someOf(records, kind, random)) {
      const wrong = slip(record.cents, random, 1);
      if (wrong === undefined) continue;
      const keyed = { ...record, cents: wrong };
      return keyedAs(records, record, keyed, `${record.cents} keyed as ${wrong}`);
    }
    return undefined;
  };
}

function stallNumber(part: 'out' | 'back', slip: Slip): Plant {
  return (records, random) => {
    for (const record of someOf(records, 'stall-close', random)) {
      if (Object.keys(record[part]).length === 0) continue;
      const product = random.pick(Object.keys(record[part]));
      const units = record[part][product] ?? 0;
      const wrong = units === 0 ? undefined : slip(units, random, 1);
      if (wrong === undefined) continue;
      const keyed = { ...record, [part]: { ...record[part], [product]: wrong } };
      return keyedAs(records, record, keyed, `${part} ${product} ${units} keyed as ${wrong}`);
    }
    return undefined;
  };
}

function stallCash(records: readonly BookRecord[], random: Seeded): Planted | undefined {
  for (const record of someOf(records, 'stall-close', random)) {
    const wrong = swappedOrWrong(record.cash, random);
    if (wrong === undefined) continue;
    return keyedAs(records, record, { ...record, cash: wrong }, `cash keyed as ${wrong}`);
  }
  return undefined;
}

/** The same record again, written by another hand a little later, without its paper's number. */
function doubled(kind: MovementKind): Plant {
  return (records, random) => {
    const [record] = someOf(records, kind, random);
    if (record === undefined) return undefined;
    const ms = Date.parse(record.at) + random.whole(1, 300) * 60_000;
    const again: Record<string, unknown> = {
      ...record,
      id: uuid7(ms, random.bytes(10)),
      at: new Date(ms).toISOString(),
      by: 'device-9',
    };
    if (random.chance(50)) {
      delete again.slip;
      delete again.receipt;
    }
    if (random.chance(25)) again.date = addDays(record.date, 1);
    return { records: [...records, again as unknown as BookRecord], told: `${kind} twice` };
  };
}

/** A record is missing; records that point at it are chosen not to exist. */
function left(kind: MovementKind): Plant {
  return (records, random) => {
    const pointedAt = new Set(
      records.map((each) => (each.kind === 'bounced' ? each.payment : undefined)),
    );
    const record = someOf(records, kind, random).find(({ id }) => !pointedAt.has(id));
    if (record === undefined) return undefined;
    const kept = records.filter((each) => each !== record);
    return { records: kept, told: `${kind} of ${record.date} missing` };
  };
}

function renamed(kind: MovementKind, field: string, from: 'seller' | 'neighbour'): Plant {
  return (records, random) => {
    const [record] = someOf(records, kind, random);
    if (record === undefined) return undefined;
    const named = records.flatMap((each) =>
      each.kind === from ? [String(Reflect.get(each, from))] : [],
    );
    const others = named.filter((each) => each !== Reflect.get(record, field));
    const keyed = { ...record, [field]: random.pick(others) };
    return keyedAs(records, record, keyed, `${field} ${Reflect.get(keyed, field)}`);
  };
}

function wrongProduct(kind: 'handover'): Plant {
  return (records, random) => {
    const products = records.flatMap((each) => (each.kind === 'product' ? [each.product] : []));
    for (const record of someOf(records, kind, random)) {
      if (Object.keys(record.lines).length === 0) continue;
      const product = random.pick(Object.keys(record.lines));
      const others = products.filter((each) => record.lines[each] === undefined);
      if (others.length === 0) continue;
      const other = random.pick(others);
      const { [product]: units = 0, ...lines } = record.lines;
      const keyed = { ...record, lines: { ...lines, [other]: units } };
      return keyedAs(records, record, keyed, `${product} keyed as ${other}`);
    }
    return undefined;
  };
}

function lineLeftOut(kind: 'handover'): Plant {
  return (records, random) => {
    const record = someOf(records, kind, random).find(({ lines }) => Object.keys(lines).length > 1);
    if (record === undefined) return undefined;
    const product = random.pick(Object.keys(record.lines));
    const { [product]: _left, ...lines } = record.lines;
    return keyedAs(records, record, { ...record, lines }, `${product} left out`);
  };
}

function otherKind(kind: MovementKind, keyedKind: MovementKind): Plant {
  return (records, random) => {
    const [record] = someOf(records, kind, random);
    if (record === undefined) return undefined;
    const { slip, ...says } = { slip: undefined, ...record };
    const keyed = { ...says, kind: keyedKind } as unknown as MovementRecord;
    return keyedAs(records, record, keyed, `${kind} keyed as ${keyedKind}`);
  };
}

function wrongSource(records: readonly BookRecord[], random: Seeded): Planted | undefined {
  const [record] = someOf(records, 'gift', random);
  if (record === undefined) return undefined;
  const from = record.from === 'supplier' ? 'stockroom' : 'supplier';
  return keyedAs(records, record, { ...record, from }, `from ${from}`);
}

function wrongTender(records: readonly BookRecord[], random: Seeded): Planted | undefined {
  const [record] = someOf(records, 'payment', random);
  if (record === undefined) return undefined;
  const tender = record.tender === 'card' ? 'cash' : 'card';
  return keyedAs(records, record, { ...record, tender }, `tender ${tender}`);
}

function shareoutSeller(records: readonly BookRecord[], random: Seeded): Planted | undefined {
  const [record] = someOf(records, 'shareout', random);
  const sellers = records.flatMap((each) => (each.kind === 'seller' ? [each.seller] : []));
  if (record === undefined) return undefined;
  const seller = random.pick(Object.keys(record.lines));
  const others = sellers.filter((each) => record.lines[each] === undefined);
  if (others.length === 0) return undefined;
  const other = random.pick(others);
  const lines = Object.fromEntries(
    Object.entries(record.lines).map(([each, own]) => [each === seller ? other : each, own]),
  );
  return keyedAs(records, record, { ...record, lines }, `${seller} keyed as ${other}`);
}

function someOf<K extends MovementKind>(
  records: readonly BookRecord[],
  kind: K,
  random: Seeded,
): RecordOf<K>[] {
  return random.shuffle(records.filter((each): each is RecordOf<K> => each.kind === kind));
}

function caseOf(records: readonly BookRecord[], product: string): number {
  const found = records.find((each) => each.kind === 'product' && each.product === product);
  return found?.kind === 'product' ? found.case : 1;
}

function keyedAs(
  records: readonly BookRecord[],
  record: BookRecord,
  keyed: MovementRecord,
  told: string,
): Planted {
  return {
    records: records.map((each) => (each === record ? keyed : each)),
    told: `${record.kind} ${'date' in record ? record.date : ''}: ${told}`,
  };
}
