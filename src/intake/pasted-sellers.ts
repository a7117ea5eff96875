import Papa from 'papaparse';
import type { Finding } from './finding.ts';
import { freeId } from './short-id.ts';

/**
 * A seller list as it is pasted from a spreadsheet: tabs, commas or semicolons, with or without a
 * header row, columns in any order. Reading gives cells; proposing gives what they would become,
 * with findings a cell, so that a person fixes them in the preview before anything is saved.
 */

/** The cells of one row as they stand in the preview. */
export interface PastedRow {
  /** The row of the pasted text, from 1. */
  readonly line: number;
  readonly seller: string;
  readonly family: string;
  readonly goal: string;
}

export interface PastedSellers {
  readonly rows: readonly PastedRow[];
  /** Headings of columns that are not kept, like birthdays or telephone numbers. */
  readonly notKept: readonly string[];
}

/** Sellers and families that the book already has. */
export interface KnownPeople {
  readonly families: readonly { readonly family: string; readonly name: string }[];
  readonly sellers: readonly {
    readonly seller: string;
    readonly name: string;
    readonly family: string;
  }[];
}

export interface ProposedRow {
  readonly cells: PastedRow;
  /** `new` is saved; `already` is in the book or earlier in the list; `fix` waits for a person. */
  readonly state: 'new' | 'already' | 'fix';
  readonly seller: { readonly seller: string; readonly name: string };
  readonly family: { readonly family: string; readonly name: string; readonly isNew: boolean };
  readonly goal: number | undefined;
  readonly findings: readonly Finding[];
}

type Column = 'seller' | 'initial' | 'family' | 'goal';

const HEADINGS: readonly (readonly [Column, RegExp])[] = [
  ['initial', /^(last name|surname|initial|family initial)$/u],
  ['family', /(^|\b)(famil(y|ies)|household|adult|parents?|guardian|account)(\b|$)/u],
  ['goal', /(^|\b)(goal|target)(\b|$)/u],
  [
    'seller',
    /(^|\b)(sellers?|child(ren)?|kid|youth|participant|member|rower|(first )?name)(\b|$)/u,
  ],
];

/** Reads pasted text into cells. Never fails: what cannot be understood stays in its cell. */
export function readPastedSellers(text: string): PastedSellers {
  const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/u, ''), {
    delimiter: delimiterOf(text),
    skipEmptyLines: false,
  }).data;
  const table = parsed
    .map((cells, at) => ({ line: at + 1, cells: cells.map((cell) => tidy(cell)) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const headings = table[0]?.cells ?? [];
  const named = columnsOf(headings);
  const columns = named ?? columnsWithoutHeadings(table.map(({ cells }) => cells));
  const body = named === undefined ? table : table.slice(1);
  const cellAt = (cells: readonly string[], column: Column) => cells[columns.indexOf(column)] ?? '';
  const rows = body.map(({ line, cells }) => ({
    line,
    seller: withInitial(cellAt(cells, 'seller'), cellAt(cells, 'initial')),
    family: cellAt(cells, 'family'),
    goal: cellAt(cells, 'goal'),
  }));
  const notKept =
    named === undefined ? [] : headings.filter((heading, at) => heading !== '' && !columns[at]);
  return { rows, notKept };
}

/** A tab wins wherever there is one; else whichever of ; and , comes more often outside quotes. */
function delimiterOf(text: string): string {
  const bare = text.replace(/"(?:[^"]|"")*"/gu, '');
  if (bare.includes('\t')) return '\t';
  return bare.split(';').length > bare.split(',').length ? ';' : ',';
}

function tidy(cell: string): string {
  return cell.normalize('NFC').replace(/\s+/gu, ' ').trim();
}

/** The meaning of each column where the first row is a heading; undefined where it is data. */
function columnsOf(headings: readonly string[]): (Column | undefined)[] | undefined {
  const columns: (Column | undefined)[] = headings.map((heading) => {
    const plain = heading.toLowerCase();
    return HEADINGS.find(([, pattern]) => pattern.test(plain))?.[0];
  });
  // Two columns of one meaning: the first counts.
  const once = columns.map((column, at) => (columns.indexOf(column) === at ? column : undefined));
  const enough = once.includes('seller') && (once.length === 1 || once.some((c) => c !== 'seller'));
  return enough && looksLikeHeadings(headings) ? once : undefined;
}

function looksLikeHeadings(cells: readonly string[]): boolean {
  return !cells.some((cell) => /^\d+$/u.test(cell));
}

/** Without headings: seller, then family, then goal; a column of numbers alone is the goal. */
function columnsWithoutHeadings(rows: readonly string[][]): (Column | undefined)[] {
  const width = Math.max(0, ...rows.map((cells) => cells.length));
  const numbers = Array.from({ length: width }, (_, at) =>
    rows.every((cells) => /^[\d., ]*$/u.test(cells[at] ?? '')),
  );
  const goal = numbers.indexOf(true);
  const names: Column[] = ['seller', 'family', ...(goal < 0 ? (['goal'] as const) : [])];
  return numbers.map((isNumber, at) => {
    if (isNumber) return at === goal ? 'goal' : undefined;
    return names.shift();
  });
}

function withInitial(first: string, last: string): string {
  return last === '' || first === '' ? first : `${first} ${last}`;
}

/**
 * What the rows would become: ids that nobody has yet, the same family once, sellers of the book
 * left alone. Ask again after every fix in the preview.
 */
export function proposeSellers(rows: readonly PastedRow[], known: KnownPeople): ProposedRow[] {
  const people = new People(known);
  return rows.map((cells) => proposeRow(cells, people));
}

function proposeRow(cells: PastedRow, people: People): ProposedRow {
  const findings: Finding[] = [];
  const find = (field: keyof PastedRow, wanted: string, severity: Finding['severity'] = 'error') =>
    findings.push({ line: cells.line, field, said: cells[field], wanted, severity });
  const name = shortName(cells.seller);
  if (name === '') find('seller', 'write the first name and initial of the seller');
  if (name.length > NAME_MAX) find('seller', `write at most ${NAME_MAX} characters`);
  if (name !== cells.seller && name !== '') {
    find('seller', `kept by first name and initial: ${name}`, 'warning');
  }
  if (cells.family === '')
    find('family', 'write the name of the adult who answers for the account');
  if (cells.family.length > NAME_MAX) find('family', `write at most ${NAME_MAX} characters`);
  const goal = goalOf(cells.goal);
  if (goal === 'unclear') find('goal', 'write whole units like 120, or nothing');
  const usable = findings.every((finding) => finding.severity === 'warning');
  const family = people.family(cells.family, usable);
  const twin = people.seller(name, family.family);
  if (usable && twin !== undefined) {
    find('seller', `already in ${twin}, so this row is left out`, 'warning');
  }
  const seller = people.take(name, family.family, usable && twin === undefined);
  return {
    cells,
    state: !usable ? 'fix' : twin !== undefined ? 'already' : 'new',
    seller: { seller, name },
    family,
    goal: goal === 'unclear' ? undefined : goal,
    findings,
  };
}

const NAME_MAX = 200;

/** Children appear by first name and initial: a full last name is cut down to its first letter. */
function shortName(name: string): string {
  const turned = /^([^,]+), (.+)$/u.exec(name);
  const words = (turned === null ? name : `${turned[2]} ${turned[1]}`).split(' ').filter(Boolean);
  const last = words.at(-1) ?? '';
  if (words.length < 2 || /^\P{M}\p{M}*\.?$/u.test(last)) return words.join(' ');
  const initial = /^\P{M}\p{M}*/u.exec(last)?.[0] ?? '';
  return `${words.slice(0, -1).join(' ')} ${initial}.`;
}

/** Whole units; thousands may be set apart by a space, comma or apostrophe. */
function goalOf(text: string): number | undefined | 'unclear' {
  if (text === '') return undefined;
  if (!/^(?:\d{1,7}|\d{1,3}(?:[ ,'’]\d{3}){1,2})$/u.test(text)) return 'unclear';
  return Number(text.replace(/\D/gu, ''));
}

/** Who is known so far: the book's people and, row by row, those of the list itself. */
class People {
  readonly #families = new Map<string, { family: string; name: string; isNew: boolean }>();
  readonly #sellers = new Map<string, 'the book' | 'the list'>();
  readonly #familyIds: Set<string>;
  readonly #sellerIds: Set<string>;

  constructor(known: KnownPeople) {
    this.#familyIds = new Set(known.families.map(({ family }) => family));
    this.#sellerIds = new Set(known.sellers.map(({ seller }) => seller));
    for (const { family, name } of known.families) {
      this.#families.set(key(name), { family, name, isNew: false });
    }
    for (const { name, family } of known.sellers) {
      this.#sellers.set(`${family} ${key(name)}`, 'the book');
    }
  }

  family(name: string, keep: boolean): ProposedRow['family'] {
    const known = this.#families.get(key(name));
    if (known !== undefined) return known;
    // The last word of "Robin Lind" makes the shorter id, and is what people say.
    const lastWord = name.split(' ').at(-1) ?? '';
    const family = freeId(lastWord, 'family', this.#familyIds);
    const made = { family, name, isNew: true };
    if (keep) {
      this.#families.set(key(name), made);
      this.#familyIds.add(family);
    }
    return made;
  }

  /** Where the seller already is, if anywhere. */
  seller(name: string, family: string): 'the book' | 'the list' | undefined {
    return this.#sellers.get(`${family} ${key(name)}`);
  }

  take(name: string, family: string, keep: boolean): string {
    const seller = freeId(name, 'seller', this.#sellerIds);
    if (keep) {
      this.#sellerIds.add(seller);
      this.#sellers.set(`${family} ${key(name)}`, 'the list');
    }
    return seller;
  }
}

/** Names are the same whatever their case, width and the point after an initial. */
function key(name: string): string {
  return name.normalize('NFKC').toLowerCase().replace(/\.$/u, '').trim();
}
