import { done, type Outcome } from '../base/outcome.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { familyAccount } from '../questions/family-account.ts';
import type { RecordOf } from '../records/record.ts';
import { type RecordPaperRefusal, recordForPaper } from './goods-slip.ts';
import type { Block, Paper } from './paper.ts';
import { familyOfSeller, type PaperContext, PaperTexts } from './paper-frame.ts';
import { capitalised } from './sentence.ts';
import { userText } from './user-text.ts';

/** The receipt for a family's payment, with its number and a place to sign. */
export function paymentReceipt(
  ledger: Ledger,
  recordId: string,
  context: PaperContext,
): Outcome<Paper, RecordPaperRefusal> {
  const record = recordForPaper(ledger, recordId, ['payment']);
  if (!record.ok) return record;
  const family = familyOfSeller(ledger, record.value.seller);
  return done(receiptOf(record.value, ledger, new PaperTexts(ledger, context, family)));
}

function receiptOf(payment: RecordOf<'payment'>, ledger: Ledger, texts: PaperTexts): Paper {
  const { words } = texts;
  const { receipt: said } = words;
  const number = payment.receipt === undefined ? undefined : userText(payment.receipt);
  const after = balanceAfter(payment, ledger, texts);
  const cheque: Block[] =
    payment.tender === 'cheque' ? [{ block: 'words', text: said.cheque }] : [];
  return {
    ...texts.frame(
      number === undefined ? said.titleBare : said.title(number),
      `receipt-${payment.id}`,
    ),
    facts: [
      { label: said.number, value: number ?? said.noNumber },
      { label: words.day, value: texts.day(payment.date) },
      { label: said.paidBy, value: texts.familyOf(payment.seller) },
      { label: words.seller, value: texts.seller(payment.seller) },
      ...(after === undefined ? [] : [{ label: said.after, value: after }]),
      { label: words.record, value: payment.id },
    ],
    blocks: [
      {
        block: 'lead',
        text: said.lead(
          texts.money(payment.cents),
          said.tenders[payment.tender],
          texts.familyOf(payment.seller),
        ),
      },
      ...cheque,
      { block: 'words', text: said.keep },
      {
        block: 'signatures',
        places: [{ label: said.signer, lines: [words.signName, words.signature, words.signDay] }],
      },
    ],
  };
}

/** What the family has to pay once this money moved; nothing where it cannot be said exactly. */
export function balanceAfter(
  moved: RecordOf<'payment'> | RecordOf<'refund'>,
  ledger: Ledger,
  texts: PaperTexts,
): string | undefined {
  const family = ledger.setup.sellers.get(moved.seller)?.family ?? '';
  const account = familyAccount(ledger, family);
  if (!account.ok) return undefined;
  const line = account.value.lines.find((one) => one.record === moved.id);
  return line === undefined ? undefined : capitalised(texts.balance(line.stillToPay));
}
