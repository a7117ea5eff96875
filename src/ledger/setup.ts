import { byText } from '../base/order.ts';
import { byWritten, type RecordOf, type SetupRecord } from '../records/record.ts';

/**
 * The set-up of a season as it stands: per id the latest record. Ids that only removed records
 * have named are not here.
 */
export interface Setup {
  readonly season: RecordOf<'season'> | undefined;
  readonly products: ReadonlyMap<string, RecordOf<'product'>>;
  readonly families: ReadonlyMap<string, RecordOf<'family'>>;
  readonly sellers: ReadonlyMap<string, RecordOf<'seller'>>;
  readonly hosts: ReadonlyMap<string, RecordOf<'host'>>;
  readonly neighbours: ReadonlyMap<string, RecordOf<'neighbour'>>;
  readonly stalls: ReadonlyMap<string, RecordOf<'stall'>>;
  readonly levels: ReadonlyMap<string, RecordOf<'level'>>;
  readonly choices: ReadonlyMap<string, RecordOf<'choice'>>;
  readonly holds: ReadonlyMap<string, RecordOf<'hold'>>;
  readonly proceeds: RecordOf<'proceeds'> | undefined;
}

/** The key under which the latest record of a set-up kind counts; unique within its kind. */
export function setupKey(record: SetupRecord): string {
  switch (record.kind) {
    case 'season':
    case 'proceeds':
      return '';
    case 'product':
      return record.product;
    case 'hold':
      return `${record.product} ${record.lot ?? ''}`;
    case 'choice':
      return `${record.seller} ${record.level}`;
    case 'family':
      return record.family;
    case 'seller':
      return record.seller;
    case 'host':
      return record.host;
    case 'neighbour':
      return record.neighbour;
    case 'stall':
      return record.stall;
    case 'level':
      return record.level;
  }
}

/** The set-up that counting records give; their order does not matter. */
export function setupOf(records: Iterable<SetupRecord>): Setup {
  const latest = new Map<string, Map<string, SetupRecord>>();
  for (const record of [...records].sort(byWritten)) {
    const byKey = latest.get(record.kind) ?? new Map<string, SetupRecord>();
    latest.set(record.kind, byKey.set(setupKey(record), record));
  }
  return {
    season: only(latest, 'season').get(''),
    products: only(latest, 'product'),
    families: only(latest, 'family'),
    sellers: only(latest, 'seller'),
    hosts: only(latest, 'host'),
    neighbours: only(latest, 'neighbour'),
    stalls: only(latest, 'stall'),
    levels: only(latest, 'level'),
    choices: only(latest, 'choice'),
    holds: only(latest, 'hold'),
    proceeds: only(latest, 'proceeds').get(''),
  };
}

/** One kind's records in the fixed order of their keys. */
function only<K extends SetupRecord['kind']>(
  latest: ReadonlyMap<string, ReadonlyMap<string, SetupRecord>>,
  kind: K,
): ReadonlyMap<string, RecordOf<K>> {
  const found = [...(latest.get(kind) ?? [])].sort((a, b) => byText(a[0], b[0]));
  return new Map(found.filter((entry): entry is [string, RecordOf<K>] => entry[1].kind === kind));
}
