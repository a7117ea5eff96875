import type { FamilyAccount } from '../../../questions/family-account.ts';
import { statementSentence } from '../../../statements/family-statement.ts';
import { PaperTexts } from '../../../statements/paper-frame.ts';
import { useBook } from '../../book.ts';
import { AccountLines } from './account-lines.tsx';

/** A family's account in one sentence, line by line, and whom to ask about it. */
export function Statement({ account }: { readonly account: FamilyAccount }) {
  const book = useBook();
  const texts = new PaperTexts(book.ledger, { group: book.address.group, asAt: book.workingDay() });
  return (
    <>
      <p class="statement-sentence">
        {statementSentence(account.totals, account.stillToPay, texts)}
      </p>
      <AccountLines account={account} />
      <p class="soft">{texts.words.statement.askAnyone}</p>
    </>
  );
}
