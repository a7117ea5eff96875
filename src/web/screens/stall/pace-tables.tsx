import { type HourSold, hourlyPace } from '../../../questions/stall/hourly-pace.ts';
import type { StallSheet } from '../../../questions/stall/stall-sheet.ts';
import type { Lines } from '../../../records/fields.ts';
import { unitsOf } from '../../../records/units-of.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Units } from '../../parts/figures.tsx';
import { type Column, Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';
import { localNow } from './use-sheet.ts';

/** How quickly it sells, by hour, and what should be left by the taps. */
export function PaceTables({ sheet }: { readonly sheet: StallSheet }) {
  const pace = hourlyPace(sheet, localNow());
  return (
    <section aria-labelledby="pace">
      <h2 id="pace">{say`Pace and what is left`}</h2>
      <p>
        <Units
          units={sheet.soldUnits}
          words={say.count(sheet.soldUnits)`# tapped as sold|# tapped as sold`}
        />{' '}
        {pace.anHour === undefined
          ? say`Too early for a figure an hour.`
          : say`${pace.anHour} an hour over ${pace.minutes} minutes so far.`}
      </p>
      <div class="two-columns sheet-lines">
        <HourTable hours={pace.hours} />
        <ProductTable sheet={sheet} />
      </div>
      <p class="soft">{say`By what was tapped. The closing count is the fact.`}</p>
    </section>
  );
}

function HourTable({ hours }: { readonly hours: readonly HourSold[] }) {
  const most = Math.max(1, ...hours.map(({ units }) => units));
  const bar = (units: number) => (
    <svg class="pace-bar" viewBox={`0 0 ${most} 1`} preserveAspectRatio="none" aria-hidden="true">
      <rect width={units} height="1" />
    </svg>
  );
  return (
    <Table
      caption={say`Sold by hour`}
      rows={hours}
      keyOf={({ hour }) => hour}
      none={say`No sale yet.`}
      columns={[
        { head: say`Hour`, cell: ({ hour }) => `${hour.slice(11)}:00` },
        { head: say`Units`, number: true, cell: ({ units }) => <Units units={units} plain /> },
        { head: say`Bar`, verbs: true, cell: ({ units }) => bar(units) },
      ]}
    />
  );
}

function ProductTable({ sheet }: { readonly sheet: StallSheet }) {
  const { ledger } = useBook();
  const { out, sold, left } = sheet;
  const units = (head: string, of: Lines): Column<string> => ({
    head,
    number: true,
    cell: (product) =>
      product in of || of === sold ? <Units units={unitsOf(of, product)} plain /> : '–',
  });
  return (
    <Table
      caption={say`By product`}
      rows={[...new Set([...Object.keys(out), ...Object.keys(sold)])]}
      keyOf={(product) => product}
      none={say`No goods yet. Make the opening count.`}
      columns={[
        { head: say`Product`, cell: (product) => productName(ledger.setup, product) },
        units(say`Out`, out),
        units(say`Sold`, sold),
        units(say`Left`, left),
      ]}
    />
  );
}
