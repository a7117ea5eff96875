import fc from 'fast-check';
import { makeSeason, smallSeason } from '../../simulation/season-maker.ts';
import { canonicalText } from '../../src/base/canonical-text.ts';
import { uuid7 } from '../../src/base/id.ts';
import { writeBook } from '../../src/intake/write-book.ts';

/** Books whose lines were written another way, or are wrong, each from a seed. */

const HEADER = { book: 'cratebook/1', group: 'wrenfield', season: 'spring-2027' } as const;
const LINES = 60;

/** The lines of the beginning of a made season, which has every kind of set-up. */
export function seasonLines(seed: number, count = LINES): string[] {
  const season = makeSeason(seed, { ...smallSeason, actsADay: 1 }).slice(0, count);
  return [...writeBook(HEADER, season)].map((line) => line.trimEnd());
}

type Change = (line: string, other: string) => string | readonly string[];

const parsed = (line: string): Record<string, unknown> => JSON.parse(line);

/** One line said another way: the same record, or something that must not pass as one. */
const CHANGES: Readonly<Record<string, Change>> = {
  'keys in order': (line) => canonicalText(parsed(line)),
  'keys backwards': (line) =>
    JSON.stringify(Object.fromEntries(Object.entries(parsed(line)).reverse())),
  spaces: (line) => line.replaceAll('":', '": ').replaceAll(',"', ', "'),
  'more spaces': (line) => ` ${line.replaceAll(':', ' :\t')} `,
  'carriage return': (line) => `${line}\r`,
  escapes: (line) => line.replaceAll('e', '\\u0065'),
  'an escaped key': (line) => line.replace('"kind"', '"k\\u0069nd"'),
  'the same again': (line) => [line, line],
  'an id again': (line, other) => {
    const { id } = parsed(other);
    return [line, JSON.stringify({ ...parsed(line), id })];
  },
  'an upper-case id': (line) =>
    line.replace(/"id":"([^"]+)"/, (_, id) => `"id":"${id.toUpperCase()}"`),
  'an edit of another': (line, other) => {
    const { id } = parsed(other);
    const record = parsed(line);
    return [line, JSON.stringify({ ...record, id: nextId(record.id), replaces: id })];
  },
  'a removal of another': (line, other) => {
    const { id, at, by } = parsed(other);
    const removal = { id: nextId(parsed(line).id), at, by, kind: 'void', voids: id, reason: 'x' };
    return [line, JSON.stringify(removal)];
  },
  'an unknown field': (line) => line.replace('{', '{"more":[1,{"x":null}],'),
  'a field twice': (line) => line.replace('{', '{"by":"somebody",'),
  'an exponent': (line) => line.replace(/":(\d+)/, '":$1e0'),
  'a fraction': (line) => line.replace(/":(\d+)/, '":$1.0'),
  'a zero in front': (line) => line.replace(/":(\d+)/, '":0$1'),
  'a minus': (line) => line.replace(/":(\d+)/, '":-$1'),
  'a large number': (line) => line.replace(/":(\d+)/, '":4294967296'),
  'a huge number': (line) => line.replace(/":(\d+)/, '":9007199254740991'),
  'a note': (line) => line.replace('{', '{"note":"Zoë: 12 jars, ≥ 3 cases",'),
  'a card number': (line) => line.replace('{', '{"note":"4111 1111 1111 1111",'),
  'a note of many digits': (line) => line.replace('{', '{"note":"0000000000001 2",'),
  'a day that is none': (line) => line.replace(/2027-0(\d)-\d\d/, '2027-0$1-31'),
  'an hour that is none': (line) => line.replace(/T\d\d:/, 'T24:'),
  'an unknown name': (line) => line.replace(/"(seller|product|host)-?\d*"/g, '"nobody"'),
  'a product of an old object': (line) => line.replace(/"lines":{/, '"lines":{"constructor":1,'),
  'no lines': (line) => line.replace(/"lines":{[^}]*}/, '"lines":{}'),
  'a field left out': (line) => line.replace(/"by":"[^"]*",/, ''),
  'an empty line': (line) => ['', line],
  'a cut-off': (line) => line.slice(0, -3),
  'bytes that are no text': (line) => line.replace('{', '{"note":"\uDC00",'),
};

/** A season's lines with some of them changed, and the names of the changes, for a failure. */
export const changedLines: fc.Arbitrary<{ readonly what: string; readonly lines: string[] }> = fc
  .record({
    seed: fc.nat(1000),
    changes: fc.array(
      fc.record({
        name: fc.constantFrom(...Object.keys(CHANGES)),
        at: fc.nat(LINES - 1),
        other: fc.nat(LINES - 1),
      }),
      { maxLength: 3 },
    ),
  })
  .map(({ seed, changes }) => {
    const lines = seasonLines(seed);
    const from = [...lines];
    for (const { name, at, other } of changes) {
      const line = from[(at % (from.length - 1)) + 1] ?? '';
      const change = CHANGES[name]?.(line, from[(other % (from.length - 1)) + 1] ?? '') ?? line;
      lines.splice(lines.indexOf(line), lines.includes(line) ? 1 : 0, ...[change].flat());
    }
    return { what: `seed ${seed}: ${changes.map(({ name }) => name).join(', ')}`, lines };
  });

/**
 * A season's lines with many edits and removals among them: of the same record, of one another, and
 * removals of removals, some written in one moment; then all in another order.
 */
export const claimedLines: fc.Arbitrary<string[]> = fc
  .record({
    seed: fc.nat(1000),
    claims: fc.array(fc.record({ isRemoval: fc.boolean(), of: fc.nat(), minute: fc.nat(3) }), {
      maxLength: 16,
    }),
    order: fc.array(fc.nat(), { minLength: 8, maxLength: 8 }),
  })
  .map(({ seed, claims, order }) => {
    const [header = '', ...lines] = seasonLines(seed, CLAIMED_LINES);
    const records = lines.map(parsed);
    const movements = records.filter((record) => 'date' in record).slice(0, CLAIMED);
    for (const [index, { isRemoval, of, minute }] of claims.entries()) {
      const claimed = movements[of % movements.length];
      if (claimed === undefined) break;
      const head = {
        id: claimId(index, of),
        at: `2027-04-01T08:0${minute}:00.000Z`,
        by: 'manager',
      };
      const claim =
        isRemoval || claimed['kind'] === 'void'
          ? { ...head, kind: 'void', voids: claimed['id'], reason: 'x' }
          : { ...claimed, ...head, date: '2027-03-30', note: undefined, replaces: claimed['id'] };
      movements.push(claim);
      records.push(claim);
    }
    const rank = (place: number) => ((place + 1) * ((order[place % order.length] ?? 0) | 1)) % 997;
    const places = [...records.keys()].sort((a, b) => rank(a) - rank(b));
    return [header, ...places.map((place) => JSON.stringify(records[place]))];
  });

/** Lines of a season that may be claimed, so few that many are claimed more than once. */
const CLAIMED_LINES = 150;
const CLAIMED = 8;

function claimId(index: number, random: number): string {
  return uuid7(Date.parse('2027-04-01') + index, new Uint8Array(10).fill(random));
}

/** Another id, so that a line can be added beside the one that has it. */
function nextId(id: unknown): string {
  const text = String(id);
  return `${text.slice(0, -1)}${text.endsWith('0') ? '1' : '0'}`;
}
