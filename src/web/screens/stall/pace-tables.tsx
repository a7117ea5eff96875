import { hourlyPace } from '../../../questions/stall/hourly-pace.ts';
import type { StallSheet } from '../../../questions/stall/stall-sheet.ts';
import { unitsOf } from '../../../records/units-of.ts';
import { productName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { Units } from '../../parts/figures.tsx';
import { Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';
import { localNow } from './use-sheet.ts';

/** How quickly it sells, by hour, and what should be left by the taps. */
export function PaceTables({ sheet }: { readonly sheet: StallSheet }) {
  const { ledger } = useBook();
  const pace = hourlyPace(sheet, localNow());
  const products = [...new Set([...Object.keys(sheet.out), ...Object.keys(sheet.sold)])];
  const most = Math.max(1, ...pace.hours.map(({ units }) => units));
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
        <Table
          caption={say`Sold by hour`}
          rows={pace.hours}
          keyOf={({ hour }) => hour}
          none={say`No sale yet.`}
          columns={[
            { head: say`Hour`, cell: ({ hour }) => `${hour.slice(11)}:00` },
            { head: say`Units`, number: true, cell: ({ units }) => <Units units={units} plain /> },
            {
              head: say`Bar`,
              verbs: true,
              cell: ({ units }) => (
                <svg
                  class="pace-bar"
                  viewBox={`0 0 ${most} 1`}
                  preserveAspectRatio="none"
                  aria-hidden="true"
                >
                  <rect width={units} height="1" />
                </svg>
              ),
            },
          ]}
        />
        <Table
          caption={say`By product`}
          rows={products}
          keyOf={(product) => product}
          none={say`No goods yet. Make the opening count.`}
          columns={[
            { head: say`Product`, cell: (product) => productName(ledger.setup, product) },
            {
              head: say`Out`,
              number: true,
              cell: (product) => <Units units={unitsOf(sheet.out, product)} plain />,
            },
            {
              head: say`Sold`,
              number: true,
              cell: (product) => <Units units={unitsOf(sheet.sold, product)} plain />,
            },
            {
              head: say`Left`,
              number: true,
              cell: (product) =>
                product in sheet.left ? (
                  <Units units={unitsOf(sheet.left, product)} plain />
                ) : (
                  say`not counted out`
                ),
            },
          ]}
        />
      </div>
      <p class="soft">{say`By what was tapped. The closing count is the fact.`}</p>
    </section>
  );
}
