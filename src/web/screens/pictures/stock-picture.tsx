import { type StockWeek, stockByWeek } from '../../../questions/stock-by-week.ts';
import { useBook } from '../../book.ts';
import { Units } from '../../parts/figures.tsx';
import { Picture } from '../../parts/picture.tsx';
import { Table } from '../../parts/table.tsx';
import { WeekColumns } from '../../parts/week-columns.tsx';
import { say } from '../../say.ts';

/** The stockroom week by week: what was left at each week's end, and what was delivered in it. */
export function StockPicture() {
  const { weeks, delivered, now } = stockByWeek(useBook().ledger);
  if (weeks.length < 2) return null;
  return (
    <Picture
      about="goods"
      name={say`${now} units in the stockroom now; ${delivered} delivered.`}
      table={<WeeksTable weeks={weeks} />}
    >
      <WeekColumns
        weeks={weeks.map(({ from, atEnd, delivered: came }) => ({ from, bars: [atEnd, came] }))}
        legend={[
          ['full', say`in the stockroom at the end of the week`],
          ['hollow', say`delivered in the week`],
        ]}
      />
    </Picture>
  );
}

function WeeksTable({ weeks }: { readonly weeks: readonly StockWeek[] }) {
  const number = (head: string, units: (week: StockWeek) => number) => ({
    head,
    number: true,
    cell: (week: StockWeek) => <Units units={units(week)} plain />,
  });
  return (
    <Table
      caption={say`The stockroom by week, in units`}
      rows={weeks}
      keyOf={({ from }) => from}
      columns={[
        { head: say`Week of`, cell: ({ from }) => say.day(from) },
        {
          ...number(say`Delivered`, (week) => week.delivered),
          cell: ({ delivered, deliveries }) => (
            <Units
              units={delivered}
              plain
              to={deliveries[0] === undefined ? undefined : `/records/${deliveries[0]}`}
            />
          ),
        },
        number(say`Back`, (week) => week.back),
        number(say`Out`, (week) => week.out),
        number(say`At the end`, (week) => week.atEnd),
      ]}
    />
  );
}
