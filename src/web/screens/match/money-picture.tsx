import { type MoneyWeek, moneyInAndOut } from '../../../questions/money-in-and-out.ts';
import { useBook } from '../../book.ts';
import { Money } from '../../parts/figures.tsx';
import { Picture } from '../../parts/picture.tsx';
import { Table } from '../../parts/table.tsx';
import { WeekColumns } from '../../parts/week-columns.tsx';
import { say } from '../../say.ts';

/** The bank account week by week: money in and out, and the debits still to come. */
export function MoneyPicture() {
  const book = useBook();
  const { weeks, now, announced } = moneyInAndOut(book.ledger, book.workingDay());
  if (weeks.length < 2) return null;
  const money = (minor: number) => say.money(minor, book.currency);
  return (
    <Picture
      about="money"
      name={say`${money(now)} on the account now, ${money(announced)} of debits still to come.`}
      table={<WeeksTable weeks={weeks} />}
    >
      <WeekColumns
        weeks={weeks.map((week) => ({
          from: week.from,
          bars: [week.paidIn, -week.paidOut, -week.announced],
          mark: week.atEnd,
        }))}
        legend={[
          ['full', say`in`],
          ['hollow', say`out: debits and fees`],
          ['dashed', say`debit still to come`],
          ['mark', say`on the account at the end of the week`],
        ]}
      />
    </Picture>
  );
}

function WeeksTable({ weeks }: { readonly weeks: readonly MoneyWeek[] }) {
  const number = (head: string, minor: (week: MoneyWeek) => number) => ({
    head,
    number: true,
    cell: (week: MoneyWeek) => <Money minor={minor(week)} plain />,
  });
  return (
    <Table
      caption={say`The bank account by week`}
      rows={weeks}
      keyOf={({ from }) => from}
      columns={[
        { head: say`Week of`, cell: ({ from }) => say.day(from) },
        number(say`In`, (week) => week.paidIn),
        number(say`Debits`, (week) => week.debited),
        number(say`Other out`, (week) => week.otherOut),
        number(say`To come`, (week) => week.announced),
        number(say`At the end`, (week) => week.atEnd),
      ]}
    />
  );
}
