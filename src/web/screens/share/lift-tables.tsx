import { levelsUp } from '../../../questions/prizes.ts';
import type { LiftedSeller, PoolLift, Reached } from '../../../questions/share/pool-lift.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { unitsText } from '../../../statements/money-text.ts';
import { useBook } from '../../book.ts';
import { type Column, Table } from '../../parts/table.tsx';

/** What each seller would get and reach, lifted and beside it evenly. */
export function LiftTables({ lift }: { readonly lift: PoolLift }) {
  const { ledger } = useBook();
  const columns: readonly Column<LiftedSeller>[] = [
    {
      head: 'Seller',
      cell: (row) => (
        <>
          {sellerName(ledger.setup, row.seller)}
          <span class="share-weight">
            {unitsText(row.credited)} so far
            {row.goal !== undefined && `, goal ${unitsText(row.goal)}`}
          </span>
        </>
      ),
    },
    { head: 'Lifted', cell: (row) => <Then row={row} more={row.lifted} /> },
    { head: 'Shared evenly', cell: (row) => <Then row={row} more={row.even} /> },
  ];
  return (
    <>
      <Table
        caption="Both ways beside each other"
        rows={[
          { way: 'Lifted', reached: lift.lifted },
          { way: 'Shared evenly', reached: lift.even },
        ]}
        keyOf={(row) => row.way}
        columns={summary}
      />
      <Table
        caption={`${unitsText(lift.units)} units to share`}
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
      <b>+{unitsText(more)}</b>, then {unitsText(units)}
      <span class="share-weight">
        {goal && '✓ goal, '}
        {step?.prize ?? 'no step yet'}
      </span>
    </>
  );
}

interface Way {
  readonly way: string;
  readonly reached: Reached;
}

const summary: readonly Column<Way>[] = [
  { head: 'Way', cell: (row) => row.way },
  { head: 'At goal', number: true, cell: (row) => unitsText(row.reached.goals) },
  { head: 'Steps', number: true, cell: (row) => unitsText(row.reached.steps) },
  { head: 'Worth', number: true, cell: (row) => unitsText(row.reached.worth) },
];
