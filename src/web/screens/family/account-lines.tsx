import type { AccountLine, FamilyAccount } from '../../../questions/family-account.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { LinesWords } from '../../parts/lines-words.tsx';
import { Owed } from '../../parts/owed.tsx';
import { Sentence } from '../../parts/sentence.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';

interface Row extends AccountLine {
  readonly place: number;
}

/** Every dated line of a family's account; each opens its record. */
export function AccountLines({ account }: { readonly account: FamilyAccount }) {
  const { ledger } = useBook();
  const several = account.sellers.length > 1;
  const columns: readonly Column<Row>[] = [
    { head: say`Day`, cell: (line) => <span class="day">{say.day(line.date)}</span> },
    {
      head: say`What happened`,
      cell: (line) =>
        line.event === 'share-out' ? (
          <SharedCredit line={line} />
        ) : (
          <>
            <Sentence record={ledger.standing.get(line.record)} />
            {several && <ForSeller seller={line.seller} />}
          </>
        ),
    },
    { head: say`Changes by`, number: true, cell: (line) => <Change minor={line.minor} /> },
    { head: say`Account after it`, number: true, cell: (line) => <Owed minor={line.stillToPay} /> },
  ];
  return (
    <div class="stack stack-lines">
      <Table
        caption={say.count(
          account.lines.length,
        )`Statement of ${account.name}, # line|Statement of ${account.name}, # lines`}
        hideCaption
        rows={account.lines.map((line, place) => ({ ...line, place }))}
        keyOf={(line) => `${line.place}`}
        columns={columns}
        none={say`No goods and no payment yet.`}
        foot={['', say`At the end`, '', <Owed key="end" minor={account.stillToPay} />]}
      />
    </div>
  );
}

/** On paper the sentence cannot be opened, so that the seller is named beside it. */
function ForSeller({ seller }: { readonly seller: string }) {
  const { setup } = useBook().ledger;
  return <span class="only-print"> ({sellerName(setup, seller)})</span>;
}

/** The seller's own part of a share-out, which credits and moves no money. */
function SharedCredit({ line }: { readonly line: AccountLine }) {
  const seller = sellerName(useBook().ledger.setup, line.seller);
  return (
    <>
      <a href={`/records/${line.record}`}>{say`Share-out to ${seller}`}</a>:{' '}
      <LinesWords lines={line.lines} />
    </>
  );
}

/** More to pay with a plus, less with a minus; a share-out changes credit only. */
function Change({ minor }: { readonly minor: number }) {
  if (minor === 0) return <span class="soft">{say`credit only`}</span>;
  return (
    <>
      {minor > 0 && '+'}
      <Money minor={minor} plain />
    </>
  );
}
