import { done, type Outcome } from '../base/outcome.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { RecordOf } from '../records/record.ts';
import { type RecordPaperRefusal, recordForPaper } from './goods-slip.ts';
import type { Paper } from './paper.ts';
import { familyOfSeller, type PaperContext, PaperTexts } from './paper-frame.ts';
import { balanceAfter } from './payment-receipt.ts';

/**
 * The paper that a family signs when the group hands money back: what was paid back, how, and who
 * received it. Money that leaves the group needs a name on paper (common practice).
 */
export function refundReceipt(
  ledger: Ledger,
  recordId: string,
  context: PaperContext,
): Outcome<Paper, RecordPaperRefusal> {
  const record = recordForPaper(ledger, recordId, ['refund']);
  if (!record.ok) return record;
  const family = familyOfSeller(ledger, record.value.seller);
  return done(refundPaper(record.value, ledger, new PaperTexts(ledger, context, family)));
}

function refundPaper(refund: RecordOf<'refund'>, ledger: Ledger, texts: PaperTexts): Paper {
  const { words } = texts;
  const { refund: said } = words;
  const family = texts.familyOf(refund.seller);
  const after = balanceAfter(refund, ledger, texts);
  return {
    ...texts.frame(said.title, `refund-${refund.id}`),
    facts: [
      { label: words.day, value: texts.day(refund.date) },
      { label: said.paidTo, value: family },
      { label: words.seller, value: texts.seller(refund.seller) },
      ...(after === undefined ? [] : [{ label: said.after, value: after }]),
      { label: words.record, value: refund.id },
    ],
    blocks: [
      {
        block: 'lead',
        text: said.lead(texts.money(refund.cents), words.receipt.tenders[refund.tender], family),
      },
      { block: 'words', text: said.keep },
      {
        block: 'signatures',
        places: said.signers.map((label) => ({
          label,
          lines: [words.signName, words.signature, words.signDay],
        })),
      },
    ],
  };
}
