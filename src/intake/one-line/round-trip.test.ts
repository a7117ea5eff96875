import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalText } from '../../base/canonical-text.ts';
import { addDays } from '../../base/day.ts';
import { type LineDraft, lineKinds } from './line-kind.ts';
import type { LineLanguage } from './line-words.ts';
import { type LineContext, type LineRead, readLine } from './read-line.ts';
import { context, names, TODAY } from './test-context.ts';
import { writeLine } from './write-line.ts';

/**
 * What is written for a record is read back as that record, whatever the names are; and no text at
 * all makes the reader throw, or give what is no record.
 */

/** Ids that are words of a line themselves, numbers, parts of each other, or the same twice. */
const HARD_IDS = [
  ...['out', 'back', 'pay', 'cash', 'may', 'mar', '12', '2c', 'c', 'from', 'a', 'de', '-', 'x'],
  ...['last', 'seller', 'product', 'stall', 'all', 'slip', 'write', 'off', 'ada', 'ada-2', 'sold'],
  ...['honey', 'honey-nut', 'jam', '2027-04-03', 'supplier', 'hoy', 'float', 'card', 'puesto'],
];
const hardNames = fc
  .record({
    seller: fc.uniqueArray(fc.constantFrom(...HARD_IDS), { minLength: 2, maxLength: 8 }),
    product: fc.uniqueArray(fc.constantFrom(...HARD_IDS), { minLength: 2, maxLength: 8 }),
    neighbour: fc.uniqueArray(fc.constantFrom(...HARD_IDS), { minLength: 1, maxLength: 3 }),
    stall: fc.uniqueArray(fc.constantFrom(...HARD_IDS), { minLength: 1, maxLength: 3 }),
  })
  .map(({ seller, product, neighbour, stall }) => ({
    seller: seller.map((id) => ({ id, name: `${id} M.`, also: 'marsh Robin Marsh' })),
    product: product.map((id) => ({ id, name: `Wild ${id}` })),
    neighbour: neighbour.map((id) => ({ id, name: `${id} group` })),
    stall: stall.map((id, at) => ({ id, name: 'Market hall', day: addDays(TODAY, 0 - at) })),
  }));

interface Case {
  readonly context: LineContext;
  readonly draft: LineDraft;
  readonly language: LineLanguage;
}

const text = fc.constantFrom('jar broken', 'for the fair: table 2', 'a', 'out 12 honey');
const maybeText = fc.option(text, { nil: undefined });
const day = fc.integer({ min: -400, max: 400 }).map((days) => addDays(TODAY, days));
const minor = fc.integer({ min: 1, max: 9_999_999 });

/** Records of every kind that a line can say, over the names of a book. */
const cases: fc.Arbitrary<Case> = fc
  .tuple(fc.oneof(fc.constant(names), hardNames), fc.constantFrom('', 'R-9'))
  .map(([known, receipt]) => context({ names: known, receipt }))
  .chain((made) =>
    fc.record({
      context: fc.constant(made),
      draft: draftIn(made),
      language: fc.constantFrom<LineLanguage>('en', 'es'),
    }),
  );

function draftIn({ names: known }: LineContext): fc.Arbitrary<LineDraft> {
  const of = (list: keyof typeof known) => fc.constantFrom(...known[list].map(({ id }) => id));
  const goods = (least: number, minKeys = 1) =>
    fc.dictionary(of('product'), fc.integer({ min: least, max: 4000 }), { minKeys, maxKeys: 4 });
  const two = fc.uniqueArray(of('seller'), { minLength: 2, maxLength: 2 });
  return fc
    .record({
      kind: fc.constantFrom(...lineKinds),
      date: day,
      seller: of('seller'),
      two,
      other: of('neighbour'),
      stall: of('stall'),
      lines: goods(1),
      counted: goods(0),
      more: goods(0, 0),
      cents: minor,
      money: fc.tuple(minor, minor, minor),
      tender: fc.constantFrom('cash', 'cheque', 'card'),
      slip: fc.constantFrom(undefined, '77', 'D-1', 'out'),
      text: maybeText,
      reason: text,
      is: fc.boolean(),
    })
    .map(draftOf);
}

function draftOf(made: {
  kind: LineDraft['kind'];
  date: string;
  seller: string;
  two: string[];
  other: string;
  stall: string;
  lines: Record<string, number>;
  counted: Record<string, number>;
  more: Record<string, number>;
  cents: number;
  money: [number, number, number];
  tender: 'cash' | 'cheque' | 'card';
  slip: string | undefined;
  text: string | undefined;
  reason: string;
  is: boolean;
}): LineDraft {
  const { kind, date, seller, lines, cents, tender, reason, is } = made;
  const note = made.text === undefined ? {} : { note: made.text };
  const slip = made.slip === undefined ? {} : { slip: made.slip };
  const [from = '', to = ''] = made.two;
  const [float, cards, cheques] = made.money;
  switch (kind) {
    case 'handover':
      return { kind, date, seller, lines, ...slip, ...note };
    case 'return':
    case 'order':
      return { kind, date, seller, lines, ...note };
    case 'pass':
      return { kind, date, from, to, lines, ...note };
    case 'payment':
      return { kind, date, seller, cents, tender, ...(is ? { receipt: 'R-9' } : {}), ...note };
    case 'refund':
      return { kind, date, seller, cents, tender, ...note };
    case 'count':
      return { kind, date, lines: made.counted, ...note };
    case 'exchange':
      return { kind, date, lines, ...note };
    case 'delivery':
    case 'supply-order':
      return { kind, date, lines, ...slip, ...note };
    case 'swap-in':
    case 'swap-out':
      return { kind, date, neighbour: made.other, lines, ...slip, ...note };
    case 'gift':
      return { kind, date, lines, from: is ? 'supplier' : 'stockroom', seller, ...note };
    case 'loss':
      return is ? { kind, date, lines, reason } : { kind, date, seller, cents, reason };
    case 'found':
      return { kind, date, lines, reason };
    case 'deposit':
      return { kind, date, cents, ...slip, ...note };
    case 'card-settle':
      return { kind, date, cents, fee: float, to: is ? 'bank' : 'supplier', ...note };
    case 'debit':
      return { kind, date, cents, ...(is ? { announced: float } : {}), ...note };
    case 'bank-fee':
      return { kind, date, cents, ...note };
    case 'settle':
      return { kind, date, proceeds: cents, ...note };
    case 'stall-close': {
      const damaged = Object.keys(made.lines).length > 2 ? { damaged: made.lines } : {};
      const goods = { out: made.counted, back: made.more, ...damaged };
      const paidout = is ? { paidout: 300, note: reason } : note;
      return {
        kind,
        date,
        stall: made.stall,
        ...goods,
        float,
        cash: cents,
        cards,
        cheques,
        ...paidout,
      };
    }
  }
}

type Reader = (line: string, context: LineContext) => LineRead;

/** Every record is read back from its line as itself and as nothing else. */
function comesBack(read: Reader) {
  return fc.property(cases, ({ context: made, draft, language }) => {
    const line = writeLine(draft, made, language);
    const answer = read(line, made);
    const said = answer.ok ? answer.value.map(canonicalText) : answer.refusal;
    expect(said, line).toEqual([canonicalText(draft)]);
  });
}

describe('what is written for a record', () => {
  it('is read back as that record', () => {
    fc.assert(comesBack(readLine), { numRuns: Number(process.env.RUNS ?? 600) });
  });

  /** Readers with one fault each, which the property must not let pass. */
  const change = (by: (draft: LineDraft) => LineDraft): Reader => {
    return (line, made) => {
      const answer = readLine(line, made);
      return answer.ok ? { ok: true, value: answer.value.map(by) } : answer;
    };
  };
  const FAULTS: Readonly<Record<string, Reader>> = {
    'that turns a pass round': change((draft) =>
      draft.kind === 'pass' ? { ...draft, from: draft.to, to: draft.from } : draft,
    ),
    'that takes the day for today': change((draft) => ({ ...draft, date: TODAY })),
    'that takes units for cases': (line, made) =>
      readLine(line.replace(/ (\d+) /, ' $1 cases '), made),
    'that lets the slip be': change((draft) => {
      if (draft.kind !== 'delivery') return draft;
      const { slip: _slip, ...rest } = draft;
      return rest;
    }),
    'that reads amounts as whole ones': (line, made) =>
      readLine(line.replace(/\.\d\d(?= |$)/, ''), made),
    'that knows no word of a list': (line, made) => readLine(line.replace(/ seller /, ' '), made),
  };
  it.each(Object.entries(FAULTS))('is not read back by a reader %s', (_, read) => {
    expect(fc.check(comesBack(read), { numRuns: 1500 }).failed).toBe(true);
  });
});

describe('any text', () => {
  const word = fc.oneof(
    fc.constantFrom(...HARD_IDS, 'honey', 'ada', '40.50', '3/4', 'cases', ':', 'yesterday', '$'),
    fc.string({ maxLength: 8, unit: 'grapheme' }),
  );
  const line = fc.oneof(
    fc.string({ maxLength: 120, unit: 'binary' }),
    fc.array(word, { maxLength: 30 }).map((words) => words.join(' ')),
  );

  it('gives records or what is wanted, and never throws', () => {
    fc.assert(
      fc.property(line, fc.oneof(fc.constant(names), hardNames), (said, known) => {
        const answer = readLine(said, context({ names: known }));
        const found = answer.ok ? answer.value : answer.refusal;
        expect(found.length).toBeGreaterThan(0);
        expect(found.length).toBeLessThan(200);
      }),
      { numRuns: 800 },
    );
  });

  it('of hard words is given up in bounded steps', () => {
    const hard = readLine(`pass ${'de '.repeat(50)}`, context());
    expect(hard.ok).toBe(false);
  });
});
