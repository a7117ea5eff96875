import { link } from '../../parts/link.tsx';
import { say } from '../../say.ts';
import { whyOf } from './add-link.ts';
import './match.css';
import '../../styles/tasks.css';
import {
  type DebitMorning,
  debitMornings,
  debitsNotAsAnnounced,
} from '../../../questions/debits/debit-mornings.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { Notice } from '../../parts/notice.tsx';
import { Page } from '../../parts/page.tsx';
import { StateMark } from '../../parts/state-mark.tsx';
import { MoneyPicture } from './money-picture.tsx';

/** What the account will hold on the morning of each debit that is still to come. */
export function DebitsScreen() {
  const book = useBook();
  const mornings = debitMornings(book.ledger, book.workingDay());
  const owed = book.ledger.balances.moneyOf('supplier');
  const money = (minor: number) => say.money(minor, book.currency);
  return (
    <Page
      title={say`Debits by the supplier`}
      above={<a href="/places/bank">{say`Bank`}</a>}
      lead={say`What the account will hold that morning, and what still helps.`}
    >
      {debitsNotAsAnnounced(book.ledger).map(({ record, date, taken, announced }) => (
        <Notice key={record} tone="stop" title={say`${say.day(date)}: not the amount announced`}>
          <p>
            {say.pieces`${money(announced)} was announced, ${money(taken)} was taken. Ask the
              supplier today. ${link(`/records/${record}`, say`The record`)}`}{' '}
            {link(whyOf('supplier', owed - taken + announced), say`Why?`)}
          </p>
        </Notice>
      ))}
      {mornings.length === 0 && (
        <p class="none">
          {say.pieces`No debit is to come. Add the days of debits to the
            ${link('/set-up/season', say`season’s deadlines`)}.`}
        </p>
      )}
      <MoneyPicture />
      {mornings.map((morning) => (
        <Morning key={morning.deadline} morning={morning} />
      ))}
      <p class="soft">
        {say.pieces`Amounts that are announced stand with the
          ${link('/set-up/season', say`season’s deadlines`)}. Days without banks, and how long
          cheques and card payouts are not safe, are
          ${link('/set-up/banking', say`the bank’s days`)}; ask your bank. Go to the bank in
          twos.`}
      </p>
    </Page>
  );
}

function Morning({ morning }: { readonly morning: DebitMorning }) {
  const { currency } = useBook();
  const { takes, safe, short } = morning;
  const word = short === 0 ? say`enough is safe` : say`${say.money(short, currency)} missing`;
  const rows: readonly (readonly [string, number])[] = [
    [morning.isAnnounced ? say`Announced` : say`Not announced; all that is owed now`, takes],
    [say`On the account that morning, by the book`, morning.holds],
    [say`of that cheques that may come back`, morning.cheques],
    [say`of that card payouts on the way`, morning.cards],
    [say`Safe`, safe],
    [say`Cash and cheques not yet banked`, morning.notBanked],
  ];
  return (
    <section>
      <h2 class="column-head">
        {morning.name}, {say.day(morning.takenOn)}
      </h2>
      <p>
        <StateMark mark={short === 0 ? 'done' : 'open'} word={word} />
      </p>
      <dl class="match-sums">
        {rows.flatMap(([name, minor]) => [
          <dt key={name}>{name}</dt>,
          <dd key={`${name} amount`}>
            <Money minor={minor} plain />
          </dd>,
        ])}
      </dl>
      {short > 0 && <WhatHelps morning={morning} />}
    </section>
  );
}

function WhatHelps({ morning }: { readonly morning: DebitMorning }) {
  const { families } = useBook().ledger.setup;
  const nameOf = (family: string) => families.get(family)?.name ?? family;
  return (
    <>
      <p>
        {say`Cash helps if it is at the bank by ${say.day(morning.lastCashDay)}, a cheque by
          ${say.day(morning.lastChequeDay)}.`}
      </p>
      {morning.couldPay.length > 0 && <p>{say`Still to pay, the most first:`}</p>}
      <ul>
        {morning.couldPay.map(({ family, owes }) => (
          <li key={family}>
            <a href={`/families/${family}`}>{nameOf(family)}</a> <Money minor={owes} plain />
          </li>
        ))}
      </ul>
    </>
  );
}
