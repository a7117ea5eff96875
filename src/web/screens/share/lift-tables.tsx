import { levelsUp } from '../../../questions/prizes.ts';
import type { LiftedSeller, PoolLift, Reached } from '../../../questions/share/pool-lift.ts';
import { sellerName } from '../../../statements/account-name.ts';
import { unitsText } from '../../../statements/money-text.ts';
import { useBook } from '../../book.ts';
import { type Column, Table } from '../../parts/table.tsx';

/** What each seller would get and reach, lifted and beside it evenly. */
export function LiftTables({ lift }: { readonly lift: PoolLift }) {
  const { ledger } = useBook();
  const levels = levelsUp(ledger);
  const reached = (units: number) => levels.filter((level) => level.units <= units).at(-1);
  const then = (units: number, goal: number | undefined) => (
    <>
      {unitsText(units)}
      <span class="share-weight">
        {goal !== undefined && units >= goal && '✓ goal; '}
        {reached(units)?.prize ?? 'no step yet'}
      </span>
    </>
  );
  const columns: readonly Column<LiftedSeller>[] = [
    { head: 'Seller', cell: (row) => sellerName(ledger.setup, row.seller) },
    { head: 'Credited', number: true, cell: (row) => unitsText(row.credited) },
    { head: 'Goal', number: true, cell: (row) => (row.goal ? unitsText(row.goal) : '') },
    { head: 'Lifted', number: true, cell: (row) => <b>{`+${unitsText(row.lifted)}`}</b> },
    { head: 'Then', cell: (row) => then(row.credited + row.lifted, row.goal) },
    { head: 'Even share', number: true, cell: (row) => `+${unitsText(row.even)}` },
    { head: 'Then, shared evenly', cell: (row) => then(row.credited + row.even, row.goal) },
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

interface Way {
  readonly way: string;
  readonly reached: Reached;
}

const summary: readonly Column<Way>[] = [
  { head: 'Way', cell: (row) => row.way },
  { head: 'At their goal', number: true, cell: (row) => unitsText(row.reached.goals) },
  { head: 'Steps reached', number: true, cell: (row) => unitsText(row.reached.steps) },
  { head: 'Worth of steps', number: true, cell: (row) => unitsText(row.reached.worth) },
];
