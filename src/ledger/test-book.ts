import { uuid7 } from '../base/id.ts';
import { seeded } from '../base/seeded.ts';
import type { BookRecord, Kind, MovementKind, RecordOf, SetupKind } from '../records/record.ts';
import { Ledger } from './ledger.ts';

/** What a record says beyond the fields that every record has. */
type Saying<K extends Kind> = Omit<RecordOf<K>, 'id' | 'at' | 'by' | 'kind' | 'date'> & {
  readonly date?: string;
  readonly at?: string;
};

/** Makes small books for tests: ids and times count up, days default to the first. */
export interface TestBook {
  readonly setup: readonly BookRecord[];
  movement<K extends MovementKind>(kind: K, saying: Saying<K>): RecordOf<K>;
  setting<K extends SetupKind>(kind: K, saying: Saying<K>): RecordOf<K>;
  remove(id: string, at?: string): RecordOf<'void'>;
  ledger(records: readonly BookRecord[]): Ledger;
}

const STARTS_MS = Date.UTC(2027, 1, 1, 18);
export const FIRST_DAY = '2027-02-01';

/** @param prices minor units a unit by product; every case has 12 units */
export function testBook(
  prices: Readonly<Record<string, number>>,
  sellers: readonly string[],
): TestBook {
  const random = seeded(1);
  let written = 0;
  const common = () => {
    written += 1;
    const ms = STARTS_MS + written * 1000;
    return { id: uuid7(ms, random.bytes(10)), at: new Date(ms).toISOString(), by: 'manager' };
  };
  const make = (kind: Kind, saying: object) => ({ ...common(), kind, ...saying }) as unknown;
  const setting: TestBook['setting'] = (kind, saying) =>
    make(kind, saying) as RecordOf<typeof kind>;
  const setup: BookRecord[] = [
    setting('season', {
      name: 'Spring 2027',
      currency: 'USD',
      starts: FIRST_DAY,
      ends: '2027-04-18',
    }),
    setting('host', { host: 'market', name: 'Market hall' }),
    setting('neighbour', { neighbour: 'hill', name: 'Hill group' }),
    setting('stall', {
      stall: 'quay',
      host: 'market',
      starts: `${FIRST_DAY}T09:00`,
      ends: `${FIRST_DAY}T12:00`,
      shifts: [],
    }),
    setting('family', { family: 'home', name: 'Robin Home' }),
  ];
  for (const product in prices) {
    setup.push(
      setting('product', { product, name: product, price: prices[product] ?? 0, case: 12 }),
    );
  }
  for (const seller of sellers) {
    setup.push(setting('seller', { seller, name: seller, family: 'home', active: true }));
  }
  return {
    setup,
    setting,
    movement: (kind, saying) => make(kind, { date: FIRST_DAY, ...saying }) as RecordOf<typeof kind>,
    remove: (id, at) => ({
      ...common(),
      kind: 'void',
      voids: id,
      reason: 'keyed twice',
      ...(at ? { at } : {}),
    }),
    ledger: (records) => Ledger.of([...setup, ...records]),
  };
}
