import type { BookRecord } from '../../records/record.ts';
import { plainHead } from '../table/head-words.ts';

/** Ids of products and neighbours by the ways that a statement may write them. */
export interface KnownNames {
  product(text: string): string | undefined;
  /** Also where the name stands among other words. */
  neighbour(text: string): string | undefined;
  /** Units a case. */
  caseOf(product: string): number;
}

/** The set-up that names are known from, as the ledger gives it. */
export interface NamedThings {
  readonly products: ReadonlyMap<string, Extract<BookRecord, { kind: 'product' }>>;
  readonly neighbours: ReadonlyMap<string, Extract<BookRecord, { kind: 'neighbour' }>>;
}

export function knownNames({ products, neighbours }: NamedThings): KnownNames {
  const byName = new Map<string, string>();
  for (const { product, name } of products.values()) {
    byName.set(plainHead(name), product);
  }
  for (const product of products.keys()) byName.set(plainHead(product), product);
  const groups = [...neighbours.values()].flatMap(({ neighbour, name }) => [
    { neighbour, words: plainHead(name) },
    { neighbour, words: plainHead(neighbour) },
  ]);
  // The longest first: "Hill group north" is not "Hill group".
  groups.sort((a, b) => b.words.length - a.words.length);
  return {
    product: (text) => byName.get(plainHead(text)),
    neighbour: (text) => {
      const said = ` ${plainHead(text)} `;
      return groups.find(({ words }) => words !== '' && said.includes(` ${words} `))?.neighbour;
    },
    caseOf: (product) => products.get(product)?.case ?? 1,
  };
}
