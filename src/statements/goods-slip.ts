import { done, type Outcome, refused } from '../base/outcome.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { stepOn } from '../ledger/prices.ts';
import { valueOfLines } from '../questions/value-of-lines.ts';
import type { BookRecord, Kind, RecordOf } from '../records/record.ts';
import type { Fact, Paper, TableBlock } from './paper.ts';
import { familyOfSeller, type PaperContext, PaperTexts } from './paper-frame.ts';
import { userText } from './user-text.ts';

/** Why a paper about one record cannot be made. */
export type RecordPaperRefusal =
  | { readonly name: 'no_such_record'; readonly record: string }
  /**
   * The record was edited or removed; `now` is the record that stands for it, where there is one.
   */
  | { readonly name: 'record_no_longer_counts'; readonly record: string; readonly now?: string }
  | { readonly name: 'no_paper_for_this_kind'; readonly record: string; readonly kind: string };

type SlipRecord = RecordOf<'handover'> | RecordOf<'return'> | RecordOf<'pass'>;

/** The paper that two people sign when goods change hands: cases, singles, units and price. */
export function goodsSlip(
  ledger: Ledger,
  recordId: string,
  context: PaperContext,
): Outcome<Paper, RecordPaperRefusal> {
  const record = recordForPaper(ledger, recordId, ['handover', 'return', 'pass']);
  if (!record.ok) return record;
  const { value } = record;
  const family = familyOfSeller(ledger, value.kind === 'pass' ? value.from : value.seller);
  return done(slipOf(value, ledger, new PaperTexts(ledger, context, family)));
}

/** The record that a paper is about, where it counts and is of a kind that has this paper. */
export function recordForPaper<K extends Kind>(
  ledger: Ledger,
  recordId: string,
  kinds: readonly K[],
): Outcome<RecordOf<K>, RecordPaperRefusal> {
  const record = ledger.standing.get(recordId);
  if (record === undefined) return refused({ name: 'no_such_record', record: recordId });
  if (!isOneOf(record, kinds)) {
    return refused({ name: 'no_paper_for_this_kind', record: recordId, kind: record.kind });
  }
  if (!ledger.standing.counts(record)) return refused(noLongerCounts(ledger, recordId));
  return done(record);
}

function isOneOf<K extends Kind>(record: BookRecord, kinds: readonly K[]): record is RecordOf<K> {
  return kinds.some((kind) => kind === record.kind);
}

function noLongerCounts(ledger: Ledger, recordId: string): RecordPaperRefusal {
  const now = ledger.standing.currentOf(recordId);
  return {
    name: 'record_no_longer_counts',
    record: recordId,
    ...(now === undefined ? {} : { now: now.id }),
  };
}

function slipOf(record: SlipRecord, ledger: Ledger, texts: PaperTexts): Paper {
  const { words } = texts;
  const { kind } = record;
  const seller = record.kind === 'pass' ? record.from : record.seller;
  const other = record.kind === 'pass' ? texts.seller(record.to) : '';
  const { units, minor } = valueOfLines(ledger, record.lines, record.date);
  const lead = words.slip.lead[kind];
  return {
    ...texts.frame(words.slip.titles[kind], `slip-${record.id}`),
    facts: slipFacts(record, seller, texts),
    blocks: [
      {
        block: 'lead',
        text: lead(units, texts.money(minor), texts.seller(seller), other),
      },
      linesTable(record, ledger, texts),
      { block: 'words', text: words.slip.terms[kind] },
      { block: 'words', text: words.slip.caution },
      {
        block: 'signatures',
        places: words.slip.signers[kind].map((label) => ({
          label,
          lines: [words.signName, words.signature, words.signDay],
        })),
      },
    ],
  };
}

function slipFacts(record: SlipRecord, seller: string, texts: PaperTexts): Fact[] {
  const { words } = texts;
  const slip = record.kind === 'handover' ? record.slip : undefined;
  return [
    { label: words.day, value: texts.day(record.date) },
    { label: words.seller, value: texts.seller(seller) },
    { label: words.family, value: texts.familyOf(seller) },
    ...(slip === undefined ? [] : [{ label: words.slip.number, value: userText(slip) }]),
    { label: words.record, value: record.id },
  ];
}

function linesTable(record: SlipRecord, ledger: Ledger, texts: PaperTexts): TableBlock {
  const { words } = texts;
  const total = valueOfLines(ledger, record.lines, record.date);
  return {
    block: 'table',
    columns: [
      { head: words.product, shows: 'text' },
      { head: words.slip.cases, shows: 'number' },
      { head: words.slip.singles, shows: 'number' },
      { head: words.units, shows: 'number' },
      { head: words.slip.unitPrice, shows: 'number' },
      { head: words.amount, shows: 'number' },
    ],
    rows: Object.keys(record.lines)
      .sort()
      .map((product) => {
        const units = record.lines[product] ?? 0;
        const step = stepOn(ledger.prices.get(product) ?? [], record.date);
        const caseUnits = step?.caseUnits ?? 1;
        const singles = units % caseUnits;
        return [
          texts.product(product),
          texts.units((units - singles) / caseUnits),
          texts.units(singles),
          texts.units(units),
          texts.money(step?.price ?? 0),
          texts.money(units * (step?.price ?? 0)),
        ];
      }),
    totals: [[words.total, '', '', texts.units(total.units), '', texts.money(total.minor)]],
  };
}
