import {
  type ListColumns,
  NAME_MAX,
  nameKey,
  type PastedRow,
  type PastedRows,
  type Proposed,
  pastedWhole,
  RowFindings,
  type Twin,
  textRows,
} from './pasted-rows.ts';
import { freeId } from './short-id.ts';

/** A seller list from a spreadsheet: what its rows say, and what they would become. */

export type SellerColumn = 'seller' | 'family' | 'goal';
export type PastedSeller = PastedRow<SellerColumn>;

/** Sellers and families that the book already has. */
export interface KnownPeople {
  readonly families: readonly { readonly family: string; readonly name: string }[];
  readonly sellers: readonly {
    readonly seller: string;
    readonly name: string;
    readonly family: string;
  }[];
}

export interface ProposedSeller extends Proposed<SellerColumn> {
  readonly seller: { readonly seller: string; readonly name: string };
  readonly family: { readonly family: string; readonly name: string; readonly isNew: boolean };
  readonly goal: number | undefined;
}

const COLUMNS: ListColumns<SellerColumn | 'initial'> = {
  headings: [
    ['initial', /^(last name|surname|initial|family initial)$/u],
    ['family', /(^|\b)(famil(y|ies)|household|adult|parents?|guardian|account)(\b|$)/u],
    ['goal', /(^|\b)(goal|target)(\b|$)/u],
    [
      'seller',
      /(^|\b)(sellers?|child(ren)?|kid|youth|participant|member|rower|(first )?name)(\b|$)/u,
    ],
  ],
  needed: 'seller',
  bare: columnsWithoutHeadings,
};

/** Reads pasted cells into rows. */
export function readPastedSellers(
  pasted: readonly (readonly string[])[],
): PastedRows<SellerColumn> {
  const { rows, notKept } = textRows(pasted, COLUMNS);
  return {
    rows: rows.map(({ line, at }) => ({
      line,
      seller: withInitial(at('seller'), at('initial')),
      family: at('family'),
      goal: at('goal'),
    })),
    notKept,
  };
}

/** Without headings: seller, then family, then goal; a column of numbers alone is the goal. */
function columnsWithoutHeadings(rows: readonly string[][]): (SellerColumn | undefined)[] {
  const width = Math.max(0, ...rows.map((cells) => cells.length));
  const numbers = Array.from({ length: width }, (_, at) =>
    rows.every((cells) => /^[\d., ]*$/u.test(cells[at] ?? '')),
  );
  const goal = numbers.indexOf(true);
  const names: SellerColumn[] = ['seller', 'family', ...(goal < 0 ? (['goal'] as const) : [])];
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
export function proposeSellers(
  rows: readonly PastedSeller[],
  known: KnownPeople,
): ProposedSeller[] {
  const people = new People(known);
  return rows.map((cells) => proposeRow(cells, people));
}

function proposeRow(cells: PastedSeller, people: People): ProposedSeller {
  const found = new RowFindings(cells);
  const name = shortName(cells.seller);
  if (name === '') found.add('seller', 'write the first name and initial of the seller');
  if (name.length > NAME_MAX) found.add('seller', `write at most ${NAME_MAX} characters`);
  if (name !== cells.seller && name !== '') {
    found.add('seller', `kept by first name and initial: ${name}`, 'warning');
  }
  if (cells.family === '')
    found.add('family', 'write the name of the adult who answers for the account');
  if (cells.family.length > NAME_MAX) found.add('family', `write at most ${NAME_MAX} characters`);
  const goal = pastedWhole(cells.goal);
  if (goal === 'unclear') found.add('goal', 'write whole units like 120, or nothing');
  const { usable } = found;
  const family = people.family(cells.family, usable);
  const twin = people.seller(name, family.family);
  if (usable && twin !== undefined) found.addTwin('seller', twin);
  const seller = people.take(name, family.family, usable && twin === undefined);
  return {
    cells,
    state: !usable ? 'fix' : twin !== undefined ? 'already' : 'new',
    seller: { seller, name },
    family,
    goal: goal === 'unclear' ? undefined : goal,
    findings: found.list,
  };
}

/** Children appear by first name and initial: a full last name is cut down to its first letter. */
function shortName(name: string): string {
  const turned = /^([^,]+), (.+)$/u.exec(name);
  const words = (turned === null ? name : `${turned[2]} ${turned[1]}`).split(' ').filter(Boolean);
  const last = words.at(-1) ?? '';
  if (words.length < 2 || /^\P{M}\p{M}*\.?$/u.test(last)) return words.join(' ');
  const initial = /^\P{M}\p{M}*/u.exec(last)?.[0] ?? '';
  return `${words.slice(0, -1).join(' ')} ${initial}.`;
}

/** Who is known so far: the book's people and, row by row, those of the list itself. */
class People {
  readonly #families = new Map<string, { family: string; name: string; isNew: boolean }>();
  readonly #sellers = new Map<string, Twin>();
  readonly #familyIds: Set<string>;
  readonly #sellerIds: Set<string>;

  constructor(known: KnownPeople) {
    this.#familyIds = new Set(known.families.map(({ family }) => family));
    this.#sellerIds = new Set(known.sellers.map(({ seller }) => seller));
    for (const { family, name } of known.families) {
      this.#families.set(nameKey(name), { family, name, isNew: false });
    }
    for (const { name, family } of known.sellers) {
      this.#sellers.set(`${family} ${nameKey(name)}`, 'the book');
    }
  }

  family(name: string, keep: boolean): ProposedSeller['family'] {
    const known = this.#families.get(nameKey(name));
    if (known !== undefined) return known;
    // The last word of "Robin Lind" makes the shorter id, and is what people say.
    const lastWord = name.split(' ').at(-1) ?? '';
    const family = freeId(lastWord, 'family', this.#familyIds);
    const made = { family, name, isNew: true };
    if (keep) {
      this.#families.set(nameKey(name), made);
      this.#familyIds.add(family);
    }
    return made;
  }

  /** Where the seller already is, if anywhere. */
  seller(name: string, family: string): Twin | undefined {
    return this.#sellers.get(`${family} ${nameKey(name)}`);
  }

  take(name: string, family: string, keep: boolean): string {
    const seller = freeId(name, 'seller', this.#sellerIds);
    if (keep) {
      this.#sellerIds.add(seller);
      this.#sellers.set(`${family} ${nameKey(name)}`, 'the list');
    }
    return seller;
  }
}
