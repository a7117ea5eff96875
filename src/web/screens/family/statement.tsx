import type { FamilyAccount } from '../../../questions/family-account.ts';
import { statementSentence } from '../../../statements/family-statement.ts';
import { PaperTexts, paperContext } from '../../../statements/paper-frame.ts';
import { useBook } from '../../book.ts';
import { say } from '../../say.ts';
import { AccountLines } from './account-lines.tsx';

/** A family's account in one sentence, line by line, and whom to ask about it. */
export function Statement({ account }: { readonly account: FamilyAccount }) {
  const book = useBook();
  const texts = new PaperTexts(
    book.ledger,
    paperContext(book.ledger, book.address, book.workingDay(), () => say),
  );
  const words = texts.words.statement;
  const ask = book.ledger.setup.season?.ask;
  return (
    <>
      <p class="statement-sentence">
        {statementSentence(account.totals, account.stillToPay, texts)}
      </p>
      <AccountLines account={account} />
      <p class="soft">{ask === undefined ? words.askAnyone : words.ask(ask)}</p>
    </>
  );
}
