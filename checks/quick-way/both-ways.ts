import { memoryOf, type PartFacts } from '../../src/intake/quick/part-facts.ts';
import { QuickReader } from '../../src/intake/quick/quick-reader.ts';
import type { QuickRecords } from '../../src/intake/quick/quick-records.ts';
import { readBook } from '../../src/intake/read-book.ts';
import type { Balances } from '../../src/ledger/balances.ts';
import type { Setup } from '../../src/ledger/setup.ts';
import { acceptBook } from '../../src/rules/accept-book.ts';
import { joinParts, quickBook } from '../../src/rules/quick-book.ts';
import { sumPart } from '../../src/rules/quick-part.ts';
import type { BalancedBook } from '../../src/rules/quick-sums.ts';

/** What a book is answered with, in plain data. */
export function answerOf(balances: Balances, asOf: Balances, setup: Setup): unknown {
  return {
    balances: balances.toAccounts(),
    asOf: asOf.toAccounts(),
    season: setup.season,
    sellers: [...setup.sellers.values()],
    stalls: [...setup.stalls.values()],
  };
}

/** The slow way's answer, or that it refuses the book. */
export function slowAnswer(bytes: Uint8Array, day: string): unknown {
  const accepted = acceptBook(readBook([bytes]));
  if (!accepted.ok) return 'refused';
  const { ledger } = accepted.value;
  return answerOf(ledger.balances, ledger.asOf(day), ledger.setup);
}

/** The quick way's answer, or that it is not sure. */
export async function quickAnswer(pieces: readonly Uint8Array[], day: string): Promise<unknown> {
  const records = await quickRecords(pieces);
  if (records === undefined) return 'not sure';
  return bothAnswers(quickBook(records), quickBook(records, day));
}

/**
 * The quick way's answer where each part of the lines is read by itself, as threads do.
 * @param parts the header begins the first
 * @param said what the other parts say; a fault can be sown there
 */
export async function answerInParts(
  parts: readonly Uint8Array[],
  day: string,
  said: (facts: PartFacts) => PartFacts = (facts) => facts,
): Promise<unknown> {
  return bothAnswers(await partsBook(parts, said), await partsBook(parts, said, day));
}

function bothAnswers(book: BalancedBook | undefined, onDay: BalancedBook | undefined): unknown {
  if (book === undefined || onDay === undefined) return book === onDay ? 'not sure' : 'half sure';
  return answerOf(book.balances, onDay.balances, book.setup);
}

async function partsBook(
  parts: readonly Uint8Array[],
  said: (facts: PartFacts) => PartFacts,
  day?: string,
): Promise<BalancedBook | undefined> {
  const read = await Promise.all(parts.map((bytes, part) => quickRecords([bytes], part === 0)));
  const [own, ...others] = read.filter((records) => records !== undefined);
  if (own === undefined || others.length < parts.length - 1) return undefined;
  const facts = others.map((records) => handedOver(said(records.facts())));
  const book = joinParts(own, facts, day);
  const [plan, ...plans] = book?.plans ?? [];
  const sums = plan && sumPart(own, plan);
  const packed = others.map((records, part) => {
    const each = plans[part];
    const other = each && sumPart(records, structuredClone(each));
    return other && { ...other, all: other.all.packed(), onDay: other.onDay?.packed() };
  });
  const all = structuredClone(packed).filter((other) => other !== undefined);
  return sums && all.length === others.length ? book?.balanced(sums, all) : undefined;
}

function handedOver(facts: PartFacts): PartFacts {
  return structuredClone(facts, { transfer: [...new Set(memoryOf(facts))] });
}

async function quickRecords(
  pieces: readonly Uint8Array[],
  isStart = true,
): Promise<QuickRecords | undefined> {
  const reader = new QuickReader(true, 0, isStart);
  for (const piece of pieces) await reader.push(piece);
  return reader.end();
}
