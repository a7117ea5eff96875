import { say } from '../../say.ts';
import './match.css';
import '../../styles/tasks.css';
import { isDay } from '../../../base/day.ts';
import { byText } from '../../../base/order.ts';
import { sum } from '../../../base/sum.ts';
import type { Ledger } from '../../../ledger/ledger.ts';
import {
  type AsReconciled,
  asReconciled,
  bookAsWritten,
} from '../../../questions/match/as-reconciled.ts';
import { type BankEntry, bankEntries } from '../../../questions/match/bank-entries.ts';
import type { BankError } from '../../../questions/match/bank-errors.ts';
import { recordSentence } from '../../../statements/record-sentence.ts';
import { useBook } from '../../book.ts';
import { go } from '../../navigation.ts';
import { PrintButton } from '../../parts/button.tsx';
import { DayField } from '../../parts/field.tsx';
import { Money } from '../../parts/figures.tsx';
import { Page } from '../../parts/page.tsx';
import { Table } from '../../parts/table.tsx';
import type { ScreenProps } from '../../routes.ts';

/**
 * A finished reconciliation, to print. Its address holds the day and the moment up to which the
 * book is read, so that it prints the same later whatever is recorded meanwhile.
 */
export function ReconciliationScreen({ search }: ScreenProps) {
  const book = useBook();
  const written = search.get('written') ?? lastWritten(book.ledger);
  const ledger = bookAsWritten(book.ledger, written);
  const said = search.get('day') ?? '';
  const day = isDay(said) ? said : lastCleared(ledger, book.workingDay());
  const found = asReconciled(ledger, day);
  return (
    <Page
      title={say`Bank reconciliation`}
      above={<a href="/match/bank">{say`Match the bank`}</a>}
      lead={say`At the end of ${say.day(day)}, from the lines that were accepted.`}
      actions={<PrintButton />}
    >
      <div class="no-print">
        <DayField
          label={say`Day`}
          value={day}
          onValue={(value) => {
            if (isDay(value)) go(`/match/reconciliation?day=${value}`, true);
          }}
        />
      </div>
      <Sums found={found} />
      <Entries caption={say`Not yet at the bank`} entries={found.notAtBank} ledger={ledger} />
      <Entries
        caption={say`At the bank before the book`}
        entries={found.notInBook}
        ledger={ledger}
      />
      {found.bankErrors.length > 0 && <Errors errors={found.bankErrors} />}
      <Foot day={day} written={written} />
    </Page>
  );
}

/** What it was read from, to be found again, and where a person signs. */
function Foot({ day, written }: { readonly day: string; readonly written: string }) {
  const link = `/match/reconciliation?day=${day}&written=${written}`;
  return (
    <>
      <p class="soft">
        {say`The book as written up to ${written.slice(0, 16).replace('T', ' ')} UTC. Hold
          the last amount against the bank’s own balance of the day.`}{' '}
        <a href={link}>{say`Address of this reconciliation`}</a>
      </p>
      <p class="no-print">
        <a href={`/why?about=bank&day=${day}`}>{say`It does not agree: why?`}</a>
      </p>
      <p class="reconciled-by">{say`Looked over by, on:`} </p>
    </>
  );
}

function Sums({ found }: { readonly found: AsReconciled }) {
  const total = (entries: readonly BankEntry[]) => sum(entries.map(({ cents }) => cents));
  return (
    <dl class="match-sums" aria-label={say`Both balances`}>
      <dt>{say`By the book`}</dt>
      <dd>
        <Money minor={found.bookBalance} plain />
      </dd>
      <dt>{say`less what is not yet at the bank`}</dt>
      <dd>
        <Money minor={total(found.notAtBank)} plain />
      </dd>
      <dt>{say`and what the bank had before the book`}</dt>
      <dd>
        <Money minor={total(found.notInBook)} plain />
      </dd>
      {found.bankErrors.length > 0 && (
        <>
          <dt>{say`and what the bank itself got wrong`}</dt>
          <dd>
            <Money minor={sum(found.bankErrors.map(({ cents }) => cents))} plain />
          </dd>
        </>
      )}
      <dt class="match-sum-total">{say`By the bank’s accepted lines`}</dt>
      <dd class="match-sum-total">
        <Money minor={found.bankBalance} plain />
      </dd>
    </dl>
  );
}

function Entries(props: {
  readonly caption: string;
  readonly entries: readonly BankEntry[];
  readonly ledger: Ledger;
}) {
  const sentence = ({ record }: BankEntry) => {
    const found = props.ledger.standing.get(record);
    return found === undefined ? record : recordSentence(found, props.ledger, say);
  };
  return (
    <Table
      caption={props.caption}
      rows={props.entries.map((entry, at) => ({ entry, at }))}
      keyOf={({ entry, at }) => `${entry.record} ${at}`}
      none={say`${props.caption}: none.`}
      columns={[
        { head: say`Day`, cell: ({ entry }) => say.day(entry.date) },
        {
          head: say`Record`,
          cell: ({ entry }) => <a href={`/records/${entry.record}`}>{sentence(entry)}</a>,
        },
        {
          head: say`Amount`,
          number: true,
          cell: ({ entry }) => <Money minor={entry.cents} plain />,
        },
      ]}
    />
  );
}

/** What the bank itself got wrong; a line that takes one back stands beside it. */
function Errors({ errors }: { readonly errors: readonly BankError[] }) {
  return (
    <Table
      caption={say`The bank’s own errors`}
      rows={errors.map((error, at) => ({ error, at }))}
      keyOf={({ at }) => String(at)}
      columns={[
        { head: say`Day`, cell: ({ error }) => say.day(error.date) },
        { head: say`Line`, cell: ({ error }) => error.text ?? error.reference ?? '' },
        {
          head: say`Amount`,
          number: true,
          cell: ({ error }) => <Money minor={error.cents} plain />,
        },
      ]}
    />
  );
}

/** The latest instant at which anything was written. */
function lastWritten(ledger: Ledger): string {
  let last = '';
  for (const { at } of ledger.standing.records()) if (at > last) last = at;
  return last;
}

function lastCleared(ledger: Ledger, otherwise: string): string {
  const days = bankEntries(ledger).flatMap(({ cleared }) => cleared?.date ?? []);
  return days.toSorted(byText).at(-1) ?? otherwise;
}
