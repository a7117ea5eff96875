import { levelsUp } from '../../../questions/prizes.ts';
import type { LiftedSeller, PoolLift, Reached } from '../../../questions/share/pool-lift.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { useBook } from '../../book.ts';
import { type Column, Table } from '../../parts/table.tsx';
import { say } from '../../say.ts';

/** What each seller would get and reach, lifted and beside it evenly. */
export function LiftTables({ lift }: { readonly lift: PoolLift }) {
  const { ledger } = useBook();
  const columns: readonly Column<LiftedSeller>[] = [
    {
      head: say`Seller`,
      cell: (row) => (
        <>
          {sellerName(ledger.setup, row.seller)}
          <span class="share-weight">
            {row.goal === undefined
              ? say`${row.credited} so far`
              : say`${row.credited} so far, goal ${row.goal}`}
          </span>
        </>
      ),
    },
    { head: say`Lifted`, cell: (row) => <Then row={row} more={row.lifted} /> },
    { head: say`Shared evenly`, cell: (row) => <Then row={row} more={row.even} /> },
  ];
  return (
    <>
      <Table
        caption={say`Both ways beside each other`}
        rows={[
          { way: say`Lifted`, reached: lift.lifted },
          { way: say`Shared evenly`, reached: lift.even },
        ]}
        keyOf={(row) => row.way}
        columns={summary}
      />
      <Table
        caption={say.count(lift.units)`# unit to share|# units to share`}
        rows={lift.sellers}
        keyOf={(row) => row.seller}
        columns={columns}
      />
    </>
  );
}

/** Units that a seller would get, what the total is then, and what that reaches. */
function Then({ row, more }: { readonly row: LiftedSeller; readonly more: number }) {
  const { ledger } = useBook();
  const units = row.credited + more;
  const step = levelsUp(ledger)
    .filter((level) => level.units <= units)
    .at(-1);
  const goal = row.goal !== undefined && units >= row.goal;
  return (
    <>
      {say.pieces`${<b>+{say.units(more)}</b>}, then ${units}`}
      <span class="share-weight">
        {goal && `${say`✓ goal`}, `}
        {step?.prize ?? say`no step yet`}
      </span>
    </>
  );
}

interface Way {
  readonly way: string;
  readonly reached: Reached;
}

const summary: readonly Column<Way>[] = [
  { head: say`Way`, cell: (row) => row.way },
  { head: say`At goal`, number: true, cell: (row) => say.units(row.reached.goals) },
  { head: say`Steps`, number: true, cell: (row) => say.units(row.reached.steps) },
  { head: say`Worth`, number: true, cell: (row) => say.units(row.reached.worth) },
];
