import { uuid7 } from '../src/base/id.ts';
import { type Seeded, seeded } from '../src/base/seeded.ts';
import { Ledger } from '../src/ledger/ledger.ts';
import type { BookRecord } from '../src/records/record.ts';

/**
 * A made-up book of many families for the measurement of statements: 8 products, nine weeks, 6 to
 * 16 lines a family (goods out, goods back, payments), names in Latin, Chinese and Arabic letters.
 */
const PRODUCTS = [
  ['wildflower-honey', 'Wildflower honey', 800],
  ['plum-jam', 'Plum jam', 650],
  ['orange-marmalade', 'Orange marmalade', 650],
  ['mint-tea', 'Mint tea', 500],
  ['camomile-tea', 'Camomile tea', 500],
  ['oat-granola', 'Oat granola', 700],
  ['hazelnut-granola', 'Hazelnut granola', 750],
  ['berry-granola', 'Berry granola', 725],
] as const;
const FAMILY_NAMES = ['Robin Ash', 'Ñandú Pérez', 'Márta Kő', 'Ivo Lund', 'Noor Vale', 'Sam Reed'];
/** One family in 25 writes its name in a script that needs a further font. */
const OTHER_SCRIPTS = ['中村', 'عمر'];
const WEEKS = 9;
const STARTS_MS = Date.UTC(2027, 1, 1, 18);

export function syntheticFamilies(families: number): Ledger {
  const random = seeded(2027);
  const records: BookRecord[] = [];
  let written = 0;
  const common = () => {
    written += 1;
    const ms = STARTS_MS + written * 1000;
    return { id: uuid7(ms, random.bytes(10)), at: new Date(ms).toISOString(), by: 'manager' };
  };
  records.push({
    ...common(),
    kind: 'season',
    name: 'Spring 2027',
    currency: 'USD',
    starts: '2027-02-01',
    ends: '2027-04-18',
  });
  for (const [product, name, price] of PRODUCTS) {
    records.push({ ...common(), kind: 'product', product, name, price, case: 12 });
  }
  for (let number = 1; number <= families; number += 1) {
    const family = `f${number}`;
    const other = number % 25 === 0 ? ` ${random.pick(OTHER_SCRIPTS)}` : '';
    const name = random.pick(FAMILY_NAMES) + other;
    records.push({ ...common(), kind: 'family', family, name });
    const sellers = random.chance(30) ? [`s${number}a`, `s${number}b`] : [`s${number}a`];
    for (const seller of sellers) {
      records.push({ ...common(), kind: 'seller', seller, name: 'Ada A.', family, active: true });
    }
    for (let line = random.whole(6, 16); line > 0; line -= 1) {
      const date = dayOf(random.whole(0, WEEKS * 7 - 1));
      records.push({ ...common(), date, ...movementOf(random.pick(sellers), line, random) });
    }
  }
  return Ledger.of(records);
}

function movementOf(seller: string, line: number, random: Seeded) {
  const kind = random.whole(1, 10);
  if (kind <= 5)
    return { kind: 'handover', seller, lines: linesOf(random), slip: `S-${line}` } as const;
  if (kind === 6) return { kind: 'return', seller, lines: linesOf(random) } as const;
  const cents = random.whole(5, 120) * 100;
  const tender = random.pick(['cash', 'cheque', 'card'] as const);
  return { kind: 'payment', seller, tender, cents, receipt: `A-${line}` } as const;
}

function linesOf(random: Seeded): Record<string, number> {
  const lines: Record<string, number> = {};
  for (let count = random.whole(1, 3); count > 0; count -= 1) {
    lines[random.pick(PRODUCTS)[0]] = random.whole(1, 12);
  }
  return lines;
}

function dayOf(days: number): string {
  return new Date(Date.UTC(2027, 1, 1 + days)).toISOString().slice(0, 10);
}
