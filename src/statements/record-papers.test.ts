import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { seasonProof } from '../questions/season-proof.ts';
import { english } from '../words/english.ts';
import { countSheet } from './count-sheet.ts';
import { goodsSlip } from './goods-slip.ts';
import type { Block, Paper } from './paper.ts';
import { paymentReceipt } from './payment-receipt.ts';
import { refundReceipt } from './refund-receipt.ts';
import { seasonProofPaper } from './season-proof-paper.ts';

const book = testBook({ honey: 600, jam: 650 }, ['ada', 'ben']);
const context = { says: () => english, group: 'Wrenfield Young Rowers', asAt: '2027-03-12' };
const handover = book.movement('handover', { seller: 'ada', lines: { honey: 29 }, slip: 'S-1' });
const payment = book.movement('payment', {
  seller: 'ada',
  tender: 'cheque',
  cents: 5000,
  receipt: 'A-17',
});
const pass = book.movement('pass', { from: 'ada', to: 'ben', lines: { honey: 2 } });
const ledger = book.ledger([handover, payment, pass]);

function made(paper: ReturnType<typeof goodsSlip>): Paper {
  if (!paper.ok) throw new Error(paper.refusal.name);
  return paper.value;
}

function blocksOf<B extends Block['block']>(paper: Paper, block: B) {
  return paper.blocks.filter((one): one is Extract<Block, { block: B }> => one.block === block);
}

describe('the goods slip', () => {
  it('shows cases and singles at the price of the day, and two places to sign', () => {
    const slip = made(goodsSlip(ledger, handover.id, context));
    expect(blocksOf(slip, 'table')[0]?.rows).toEqual([
      ['honey', '2', '5', '29', '$6.00', '$174.00'],
    ]);
    expect(blocksOf(slip, 'table')[0]?.totals).toEqual([['Total', '', '', '29', '', '$174.00']]);
    expect(blocksOf(slip, 'signatures')[0]?.places.map((place) => place.label)).toEqual([
      'Handed over by',
      'Taken over by',
    ]);
    expect(slip.facts.map((fact) => fact.value)).toContain('S-1');
  });

  it('names both sellers of a pass', () => {
    const slip = made(goodsSlip(ledger, pass.id, context));
    expect(blocksOf(slip, 'lead')[0]?.text).toBe('ada passes 2 units at $12.00 on to ben.');
  });

  it('refuses, by name, what has no slip', () => {
    const removed = book.ledger([handover, book.remove(handover.id)]);
    const edited = { ...handover, id: payment.id, replaces: handover.id, lines: { honey: 3 } };
    expect(goodsSlip(ledger, 'x', context)).toMatchObject({ refusal: { name: 'no_such_record' } });
    expect(goodsSlip(ledger, payment.id, context)).toMatchObject({
      refusal: { name: 'no_paper_for_this_kind', kind: 'payment' },
    });
    expect(goodsSlip(removed, handover.id, context)).toEqual({
      ok: false,
      refusal: { name: 'record_no_longer_counts', record: handover.id },
    });
    expect(goodsSlip(book.ledger([handover, edited]), handover.id, context)).toMatchObject({
      refusal: { name: 'record_no_longer_counts', now: payment.id },
    });
  });
});

describe('the payment receipt', () => {
  it('says number, amount, what is still to pay, and where to sign', () => {
    const receipt = made(paymentReceipt(ledger, payment.id, context));
    expect(receipt.title).toBe('Receipt A-17');
    expect(blocksOf(receipt, 'lead')[0]?.text).toBe('Received $50.00 by cheque from Robin Home.');
    expect(receipt.facts.map((fact) => fact.value)).toContain('Still to pay $124.00');
    expect(blocksOf(receipt, 'signatures')).toHaveLength(1);
    expect(blocksOf(receipt, 'words')[0]?.text).toContain('once the bank has cleared it');
  });

  it('says so where no number was given', () => {
    const bare = book.movement('payment', { seller: 'ada', tender: 'cash', cents: 100 });
    const receipt = made(paymentReceipt(book.ledger([bare]), bare.id, context));
    expect(receipt.facts[0]).toEqual({ label: 'Receipt number', value: 'none given' });
  });

  it('refuses another kind', () => {
    expect(paymentReceipt(ledger, pass.id, context)).toMatchObject({
      refusal: { name: 'no_paper_for_this_kind', kind: 'pass' },
    });
  });
});

describe('the refund receipt', () => {
  const refund = book.movement('refund', { seller: 'ada', tender: 'cash', cents: 2500 });
  const refunded = book.ledger([handover, payment, refund]);

  it('says who got what back, what is then still to pay, and where both sign', () => {
    const receipt = made(refundReceipt(refunded, refund.id, context));
    expect(blocksOf(receipt, 'lead')[0]?.text).toBe('Paid back $25.00 in cash to Robin Home.');
    expect(receipt.facts.map((fact) => fact.value)).toContain('Still to pay $149.00');
    expect(blocksOf(receipt, 'signatures')[0]?.places.map((place) => place.label)).toEqual([
      'Paid back by',
      'Received by',
    ]);
  });

  it('refuses another kind, and a refund that was removed', () => {
    expect(refundReceipt(refunded, payment.id, context)).toMatchObject({
      refusal: { name: 'no_paper_for_this_kind', kind: 'payment' },
    });
    const removed = book.ledger([refund, book.remove(refund.id)]);
    expect(refundReceipt(removed, refund.id, context)).toMatchObject({
      refusal: { name: 'record_no_longer_counts' },
    });
  });
});

describe('the count sheet', () => {
  const product = (id: string, name: string, storage: string, retired = false) =>
    book.setting('product', { product: id, name, price: 500, case: 12, storage, retired });
  const stocked = book.ledger([
    product('tea', 'Mint tea', 'B'),
    product('honey', 'Wildflower honey', 'A'),
    product('jam', 'Plum jam', 'A'),
    product('nuts', 'Nuts', 'A', true),
    book.movement('delivery', { lines: { honey: 7331 } }),
  ]);
  const sheet = countSheet(stocked, context);

  it('lists products in the order of the shelves, with empty boxes', () => {
    expect(blocksOf(sheet, 'table')[0]?.rows).toEqual([
      ['A', 'Plum jam', '12', '', ''],
      ['A', 'Wildflower honey', '12', '', ''],
      ['B', 'Mint tea', '12', '', ''],
    ]);
    expect(blocksOf(sheet, 'signatures')[0]?.places).toHaveLength(2);
  });

  it('never shows what the book says', () => {
    expect(JSON.stringify(sheet)).not.toMatch(/7,?331|610/);
  });
});

describe('the season proof on paper', () => {
  it('shows both sides of every product and in total, and two places to sign', () => {
    const proved = book.ledger([
      book.movement('delivery', { lines: { honey: 40 } }),
      handover,
      book.movement('swap-out', { neighbour: 'hill', lines: { honey: 4 } }),
    ]);
    const proof = seasonProof(proved);
    if (!proof.ok) throw new Error(proof.refusal.name);
    const paper = seasonProofPaper(proof.value, proved, context);
    const [cameIn, places] = blocksOf(paper, 'table');
    expect(cameIn?.rows[0]).toEqual(['honey', '40', '0', '4', '0', '36']);
    expect(places?.rows[0]).toEqual(['honey', '29', '0', '0', '0', '7', '36', 'agrees']);
    expect(places?.totals?.[0]).toEqual(['Total', '29', '0', '0', '0', '7', '36', 'agrees']);
    expect(blocksOf(paper, 'lead')[0]?.text).toBe(
      '36 units to account for, and all of them are accounted for.',
    );
    expect(blocksOf(paper, 'signatures')[0]?.places).toHaveLength(2);
  });
});
