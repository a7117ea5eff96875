import { say } from '../../say.ts';
import '../../styles/tasks.css';
import { byText } from '../../../base/order.ts';
import { type FamilyAccount, familyAccounts } from '../../../questions/family-account.ts';
import { useBook } from '../../book.ts';
import { PrintButton } from '../../parts/button.tsx';
import { Page } from '../../parts/page.tsx';
import { PaperLinks } from '../../parts/paper-links.tsx';
import { Statement } from '../family/statement.tsx';

/** All statements one after the other; printed, each family begins on a page of its own. */
export function StatementsScreen() {
  const book = useBook();
  const answer = familyAccounts(book.ledger);
  const above = <a href="/families">{say`Families`}</a>;
  if (!answer.ok) {
    return (
      <Page title={say`Statements`} above={above}>
        <p>{say`An amount in this book is too large to add up. Find and edit it first.`}</p>
      </Page>
    );
  }
  const accounts = [...answer.value.values()].sort((a, b) => byText(a.name, b.name));
  return (
    <Page
      title={say`Statements`}
      above={above}
      lead={say.count(
        accounts.length,
      )`# family, ${book.name}, as of ${say.day(book.workingDay())}.|# families, ${book.name}, as of
        ${say.day(book.workingDay())}.`}
      actions={
        <>
          <PrintButton>{say`Print all`}</PrintButton>
          <PaperLinks paper="statements" words={say`All statements`} />
        </>
      }
      layout="statements-page"
    >
      {accounts.map((account) => (
        <OneStatement key={account.family} account={account} />
      ))}
    </Page>
  );
}

function OneStatement({ account }: { readonly account: FamilyAccount }) {
  const id = `of-${account.family}`;
  return (
    <section class="one-statement" aria-labelledby={id}>
      <h2 id={id}>
        {account.name}
        <span class="soft"> · {account.sellers.map((seller) => seller.name).join(say`, `)}</span>
      </h2>
      <p class="no-print">
        <PaperLinks paper="statement" about={account.family} words={say`Statement`} />
      </p>
      <Statement account={account} />
    </section>
  );
}
