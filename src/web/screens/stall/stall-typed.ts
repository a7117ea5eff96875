import { isDay } from '../../../base/day.ts';
import { done, type Outcome, refused } from '../../../base/outcome.ts';
import type { Ledger } from '../../../ledger/ledger.ts';
import { denominations } from '../../../questions/denominations.ts';
import type { StallDraft } from '../../../questions/stall-settlement.ts';
import type { Lines } from '../../../records/fields.ts';
import type { RecordOf } from '../../../records/record.ts';
import type { CountersTyped } from '../../parts/counters-field.tsx';
import type { FieldError } from '../../parts/notice.tsx';
import {
  type LinesTyped,
  linesToType,
  moneyToType,
  typedLines,
  typedMoney,
  typedWhole,
} from '../../parts/typed.ts';
import { say } from '../../say.ts';

/** What a settle sheet says, as it was typed. */
export interface StallTyped {
  readonly date: string;
  readonly out: LinesTyped;
  readonly back: LinesTyped;
  readonly damaged: LinesTyped;
  readonly float: string;
  /** Pieces by denomination in minor units. */
  readonly tally: Readonly<Record<string, string>>;
  /** Counted cash as one sum, where the currency has no known notes and coins. */
  readonly cash: string;
  readonly cards: string;
  readonly cheques: string;
  readonly paidout: string;
  readonly note: string;
  readonly counters: CountersTyped;
}

export type GoodsPart = 'out' | 'back' | 'damaged';
export type MoneyPart = 'float' | 'cash' | 'cards' | 'cheques' | 'paidout';

export function emptyStall(date: string): StallTyped {
  return {
    date,
    out: {},
    back: {},
    damaged: {},
    float: '',
    tally: {},
    cash: '',
    cards: '',
    cheques: '',
    paidout: '',
    note: '',
    counters: ['', ''],
  };
}

/** A settled stall back in its form, to be edited. */
export function stallToType(
  close: RecordOf<'stall-close'>,
  ledger: Ledger,
  currency: string,
): StallTyped {
  const money = (minor: number) => (minor === 0 ? '' : moneyToType(minor, currency));
  const pieces = Object.entries(close.tally ?? {}).map(([value, count]) => [value, String(count)]);
  return {
    date: close.date,
    out: linesToType(close.out, ledger, close.date),
    back: linesToType(close.back, ledger, close.date),
    damaged: linesToType(close.damaged ?? {}, ledger, close.date),
    float: money(close.float),
    tally: Object.fromEntries(pieces),
    cash: money(close.cash),
    cards: money(close.cards),
    cheques: money(close.cheques),
    paidout: money(close.paidout ?? 0),
    note: close.note ?? '',
    counters: close.counters ?? ['', ''],
  };
}

/** The sheet as numbers: what fits counts, what does not is 0 and named in the errors. */
export interface StallRead {
  readonly draft: StallDraft;
  readonly errors: readonly FieldError[];
}

export function readStall(
  stall: string,
  typed: StallTyped,
  ledger: Ledger,
  currency: string,
): StallRead {
  const errors: FieldError[] = [];
  const goods = (part: GoodsPart): Lines => {
    const lines = typedLines(typed[part], ledger, typed.date);
    if (lines.ok) return lines.value;
    for (const [product, words] of lines.refusal)
      errors.push({ field: `${part}.${product}`, words });
    return {};
  };
  const money = (part: MoneyPart): number => {
    if (typed[part].trim() === '') return 0;
    const minor = typedMoney(typed[part], currency);
    if (!minor.ok) errors.push({ field: part, words: minor.refusal });
    return minor.ok ? minor.value : 0;
  };
  if (!isDay(typed.date)) errors.push({ field: 'date', words: say`Choose the day of the stall.` });
  const paidout = money('paidout');
  const draft = {
    stall,
    date: typed.date,
    out: goods('out'),
    back: goods('back'),
    damaged: goods('damaged'),
    float: money('float'),
    cards: money('cards'),
    cheques: money('cheques'),
    paidout,
    ...(tallies(typed, currency) ? { tally: pieces(typed, errors) } : { cash: money('cash') }),
  };
  if (paidout > 0 && typed.note.trim() === '') {
    errors.push({ field: 'note', words: say`Write what the cash was paid out for.` });
  }
  return { draft, errors };
}

/** Cash is counted by piece, unless an edited record came with a sum alone. */
export function tallies(typed: StallTyped, currency: string): boolean {
  if (denominations(currency).length === 0) return false;
  return typed.cash === '' || Object.keys(typed.tally).length > 0;
}

function pieces(typed: StallTyped, errors: FieldError[]): Record<string, number> {
  const tally: Record<string, number> = {};
  for (const value in typed.tally) {
    const count = typedWhole(typed.tally[value] ?? '');
    if (!count.ok) errors.push({ field: `tally.${value}`, words: count.refusal });
    else if (count.value > 0) tally[value] = count.value;
  }
  return tally;
}

/** The record of a sheet without errors. @param cash minor units, from the tally or as one sum */
export function stallCloseDraft(
  read: StallRead,
  typed: StallTyped,
  cash: number,
): Outcome<Omit<RecordOf<'stall-close'>, 'id' | 'at' | 'by'>, readonly FieldError[]> {
  if (read.errors.length > 0) return refused(read.errors);
  const { tally, damaged = {}, paidout = 0, cash: _sum, ...draft } = read.draft;
  const [first, second] = typed.counters.map((name) => name.trim());
  const note = typed.note.trim();
  return done({
    kind: 'stall-close',
    ...draft,
    cash,
    ...(Object.keys(damaged).length === 0 ? {} : { damaged }),
    ...(paidout === 0 ? {} : { paidout }),
    ...(tally === undefined || Object.keys(tally).length === 0 ? {} : { tally: { ...tally } }),
    ...(first && second ? { counters: [first, second] } : {}),
    ...(note === '' ? {} : { note }),
  });
}
