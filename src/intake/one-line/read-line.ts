import { canonicalText } from '../../base/canonical-text.ts';
import { nearest } from '../../base/nearest.ts';
import { done, type Outcome, refused } from '../../base/outcome.ts';
import { type KnownNames, NameIndex } from './known-names.ts';
import { type Drafts, draftsOf, type LineBook } from './line-drafts.ts';
import { frames } from './line-frames.ts';
import { type LineDraft, type LineKind, lineKinds } from './line-kind.ts';
import { missing, partsOf } from './line-parts.ts';
import { pathsFor } from './line-paths.ts';
import { knownWords, type Piece, piecesAt } from './line-pieces.ts';
import { type LineTokens, lineTokens } from './line-tokens.ts';
import type { LineTrouble } from './line-trouble.ts';

/**
 * One line of text to the records it may mean: `ada out 12 honey 6 jam`, `pay ada 40 cash`,
 * `devuelve ben 2 te ayer`. Words of both languages are known at once, in nearly any order; names
 * by any part that is clear. Nothing is guessed: one reading is the record, several are asked, and
 * none says what is wanted. Reads no clock: today comes in with the book.
 */
export interface LineContext extends LineBook {
  readonly names: KnownNames;
}

export type LineRead = Outcome<readonly LineDraft[], readonly LineTrouble[]>;

const LINE_MAX = 400;
/** A note's or reason's most, as its schema says; the schema would bring its library along. */
export const TAIL_MAX = 500;
const TOKENS_MAX = 60;
/** What a line without a verb may mean: the four things done most. */
const WITHOUT_VERB: readonly LineKind[] = ['handover', 'return', 'payment', 'refund'];

export function readLine(text: string, context: LineContext): LineRead {
  if (text.trim() === '') return refused([{ ...missing('a line'), name: 'nothing_written' }]);
  const index = new NameIndex(context.names);
  const line = lineTokens(text, (word) => index.has(word));
  const isLong = text.length > LINE_MAX + TAIL_MAX || line.tokens.length > TOKENS_MAX;
  if (isLong || line.tail.length > TAIL_MAX) {
    return refused([{ ...missing(`at most ${LINE_MAX} characters`), name: 'too_long' }]);
  }
  const starts = line.tokens.map((_, at) => piecesAt(line.tokens, at, index, context));
  const unknown = unknownWords(line, starts, index);
  if (unknown.length > 0) return refused(unknown);
  const verbs = new Set(starts.flat().flatMap((piece) => (piece.is === 'verb' ? piece.kind : [])));
  const kinds = verbs.size > 0 ? lineKinds.filter((kind) => verbs.has(kind)) : WITHOUT_VERB;
  const read = kinds.map((kind) => readKind(kind, line, starts, verbs.size > 0, context, index));
  const costs = read.flatMap((one) => (one.ok ? one.value.cost : []));
  const least = Math.min(...costs);
  const meant = read.flatMap((one) => (one.ok && one.value.cost === least ? one.value : []));
  if (meant.length === 0) return refused(whatIsWanted(read, verbs.size > 0));
  if (meant.some(({ isCut }) => isCut)) {
    const wanted = 'more of a name: there are too many that it may be';
    return refused([{ name: 'too_many_meanings', said: '', wanted }]);
  }
  return done(different(meant.flatMap(({ drafts }) => drafts)));
}

interface KindRead extends Drafts {
  readonly cost: number;
}

interface KindRefusal {
  readonly troubles: readonly LineTrouble[];
  /** Words that were understood; the reading that came furthest is the one to tell about. */
  readonly reached: number;
  readonly cost: number;
}

/** All cheapest ways to read the line as one kind. */
function readKind(
  kind: LineKind,
  line: LineTokens,
  starts: readonly (readonly Piece[])[],
  hasVerb: boolean,
  context: LineContext,
  index: NameIndex,
): Outcome<KindRead, KindRefusal> {
  const { paths, stuckAt } = pathsFor(kind, starts, hasVerb);
  const way = kind === 'swap-in' ? 'from' : kind === 'swap-out' ? 'to' : undefined;
  let troubles: readonly LineTrouble[] | undefined;
  let found: KindRead | undefined;
  for (const { pieces, cost } of paths) {
    if (found !== undefined && cost > found.cost) break;
    const parts = partsOf(pieces, frames[kind], way);
    const made: Drafts = parts.ok
      ? draftsOf(kind, parts.value, line.tail, context, index)
      : { drafts: [], troubles: [parts.refusal], isCut: false };
    troubles ??= made.troubles;
    if (made.drafts.length === 0) continue;
    const drafts = [...(found?.drafts ?? []), ...made.drafts];
    found = { drafts, troubles: [], isCut: made.isCut || found?.isCut === true, cost };
  }
  if (found !== undefined) return done(found);
  const reached = paths.length > 0 ? line.tokens.length : stuckAt;
  const stuck = line.tokens[stuckAt]?.said ?? '';
  const stray: LineTrouble = {
    name: 'word_does_not_belong',
    said: stuck,
    wanted: `a line without “${stuck}”`,
  };
  return refused({ troubles: troubles ?? [stray], reached, cost: paths[0]?.cost ?? 0 });
}

/** Words that are part of nothing known, each with the known word that is nearest. */
function unknownWords(
  { tokens }: LineTokens,
  starts: readonly (readonly Piece[])[],
  index: NameIndex,
): LineTrouble[] {
  const covered = new Set<number>();
  for (const [at, pieces] of starts.entries()) {
    for (const { length } of pieces) for (let i = 0; i < length; i += 1) covered.add(at + i);
  }
  const unknown = tokens.filter((_, at) => !covered.has(at));
  if (unknown.length === 0) return [];
  const known = [...index.words(), ...knownWords()];
  return unknown.map(({ said, plain }) => {
    const near = nearest(plain, known);
    const wanted = 'a name of this book, a number, a day, or what happened';
    return {
      name: 'word_not_known',
      said,
      wanted,
      ...(near === undefined ? {} : { nearest: near }),
    };
  });
}

/** What to say where no kind fits: what the kind that came furthest still wants. */
function whatIsWanted(
  read: readonly Outcome<KindRead, KindRefusal>[],
  hasVerb: boolean,
): readonly LineTrouble[] {
  if (!hasVerb) {
    return [{ ...missing('what happened, like out, back, pay or count'), name: 'verb_missing' }];
  }
  const refusals = read.flatMap((one) => (one.ok ? [] : one.refusal));
  const best = refusals.sort((a, b) => b.reached - a.reached || a.cost - b.cost)[0];
  // Every name that could be meant lacks the same: it is said once.
  return different(best?.troubles ?? []);
}

function different<T>(all: readonly T[]): T[] {
  return [...new Map(all.map((one) => [canonicalText(one), one])).values()];
}
