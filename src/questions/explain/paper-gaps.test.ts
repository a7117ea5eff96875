import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import { explain } from './explain.ts';
import { readObservation } from './observation.ts';
import { paperGaps } from './paper-gaps.ts';

const made = testBook({ honey: 800 }, ['ada', 'ben']);
const delivery = made.movement('delivery', { lines: { honey: 400 } });
const out = (slip: string, seller = 'ada', honey = 3) =>
  made.movement('handover', { seller, lines: { honey }, slip });
const paid = (receipt: string) =>
  made.movement('payment', { seller: 'ben', tender: 'cash', cents: 900, receipt });
const numbered = (from: number, to: number, without: readonly number[] = []) =>
  Array.from({ length: to - from + 1 }, (_, at) => from + at)
    .filter((number) => !without.includes(number))
    .map((number) => String(number).padStart(3, '0'));

describe('gaps in the numbers of papers', () => {
  it('are those within a series, written as the others are', () => {
    const slips = numbered(7, 20, [9, 15]).map((number) => out(`D${number}`));
    const receipts = ['K7-', 'B2-'].flatMap((device) =>
      numbered(1, 9, device === 'B2-' ? [4] : []).map((number) => paid(`${device}${number}`)),
    );
    const gaps = paperGaps(made.ledger([delivery, ...slips, ...receipts]));
    expect(gaps.get('handover')).toEqual({ carried: 1, numbers: 14, missing: ['D009', 'D015'] });
    expect(gaps.get('payment')).toMatchObject({ numbers: 18, missing: ['B2-004'] });
    expect(gaps.has('delivery')).toBe(false);
  });

  it('are none where a paper was keyed and removed, or numbers are no series', () => {
    const slips = numbered(1, 12).map((number) => out(`D${number}`));
    const removed = slips[4];
    const removal = made.remove(removed?.id ?? '');
    expect(paperGaps(made.ledger([...slips, removal])).get('handover')?.missing).toEqual([]);
    const odd = [3, 90, 211, 400, 733, 801, 950, 999].map((number) => out(`X${number}`));
    expect(paperGaps(made.ledger(odd)).has('handover')).toBe(false);
    expect(paperGaps(made.ledger([out('none'), out('D1')])).size).toBe(0);
  });
});

describe('a gap as evidence', () => {
  const seen = (ledger: ReturnType<typeof made.ledger>, less: number) => {
    const honey = ledger.balances.stockOf('stockroom', 'honey') - less;
    const observed = readObservation(ledger, { 'stock:stockroom': { honey } });
    if (!observed.ok) throw new Error(observed.refusal);
    const { explanations } = explain(ledger, observed.value);
    const isOut = ({ edits: [edit] }: (typeof explanations)[number]) =>
      edit?.op === 'add' && edit.record.kind === 'handover';
    return explanations.filter(isOut).reduce((sum, { odds }) => sum + odds, 0);
  };

  it('speaks for a missing record, and a series without one against it', () => {
    const ledger = (without: readonly number[]) =>
      made.ledger([
        delivery,
        ...numbered(1, 20, without).map((number) => out(`D${number}`, 'ben')),
      ]);
    const [gap, none] = [seen(ledger([11]), 5), seen(ledger([]), 5)];
    expect(gap).toBeGreaterThan(none + 0.1);
  });
});
